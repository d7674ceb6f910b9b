// Package browsertest tests the built page in headless Chromium.
//
// A test package calls [Main] from TestMain and [Open] in each test. Each test has
// a server and a browser profile of its own, in one browser process. A test fails
// on any error in the page's console, on any exception and on any request that
// leaves the server, besides what it checks itself.
//
// The environment decides what happens where there is no browser or no built
// page, see [Main]:
//
//	TOEWRIGHT_BROWSER=off       skip the tests
//	TOEWRIGHT_BROWSER=required  fail; so does CI=true
//	(neither)                   skip them and say so
//	CHROMIUM                    the browser's name or path, if not a usual one
//	TOEWRIGHT_SHOTS             folder to write the pictures of [Page.Shot] to
package browsertest
