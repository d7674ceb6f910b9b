// Package engines drives browsers of three engines by what each listens to for tests:
// WebKitGTK's and Chromium's drivers speak the WebDriver protocol of the W3C over HTTP, and
// Firefox speaks the same commands over a socket of its own (Marionette), so that no driver is
// needed. Its tests go through the page's main job in each engine that is there.
//
// The environment has a say:
//
//	TOEWRIGHT_ENGINES=required  fail rather than leave an engine out; so does CI=true
//	TOEWRIGHT_ENGINES=Firefox   only the engines named, with commas between
//	TOEWRIGHT_SHOTS             folder to write pictures to
package engines
