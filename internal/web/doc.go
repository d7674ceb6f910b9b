// Package web is the HTTP door: the page with its service worker, served so that
// it keeps working when the server is gone, and the calls under /api/.
//
// The front end is embedded from the folder dist, which the build fills. In a clean
// checkout that folder is empty: the program builds all the same, the calls work,
// and in place of the page stands a sentence that says what to run.
package web
