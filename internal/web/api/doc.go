// Package api answers the HTTP calls: a study is posted to /api/v1/sweep and its
// like, options are query parameters of the names that the commands' flags have,
// and the answer is the JSON that the command prints, or the page that the command
// report writes. It also serves the study's schema, an OpenAPI document, /healthz and,
// apart, /metrics.
//
// What goes wrong is told in one line:
//
//	{"error": {"key": "suspension.left.toe", "message": "want a number"}}
//
// with status 400 for a study or an option that is wrong, 404 for the digest of a study
// that is not kept, 413 for one that is too large, 415 for one that is not sent as
// application/json, 422 for one that cannot be solved, 429 where too many calls wait, 503
// where the server is stopping and 504 where the answer took too long. A caller that
// goes away ends the work on its call.
//
// A study that comes is kept in memory a while, to be named by its digest; it may come in an
// envelope with a car that is asked for. A call for figures of one car takes many of them on
// lines, and answers each on a line as it comes. Nothing of a study is logged or written down.
package api
