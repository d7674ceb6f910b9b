// Package browsertest tests the built page in headless Chromium.
//
// A test package calls [Main] from TestMain and [Open] in each test. Each test has
// a server and a browser profile of its own, in one browser process. A test fails
// on any error in the page's console, on any exception and on any request that
// leaves the server, besides what it checks itself.
//
// Where there is no browser or no built page the tests are left out, which go test
// shows only with -v; make test-browser builds the page first and says it aloud.
// The environment has a say:
//
//	TOEWRIGHT_BROWSER=required  fail rather than leave out; so does CI=true
//	CHROMIUM                    the browser's name or path, if not a usual one
//	TOEWRIGHT_SHOTS             folder to write the pictures of [Page.Shot] to
package browsertest
