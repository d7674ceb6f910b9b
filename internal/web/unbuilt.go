package web

import (
	"io"
	"net/http"
)

// unbuiltPage stands in for the page in a program that was built without it.
const unbuiltPage = `<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<title>Toewright: front end not built</title>
<h1>The front end has not been built</h1>
<p>This program was compiled without its page. In the source folder run</p>
<pre>make run</pre>
<p>which builds the page and serves it, or <code>make build</code> for the program alone.
The commands and the calls under <code>/api/</code> work without it.</p>
</html>
`

// serveUnbuilt says that the front end is missing and how to get it.
func serveUnbuilt(w http.ResponseWriter, _ *http.Request) {
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.Header().Set("Cache-Control", "no-store")
	w.WriteHeader(http.StatusServiceUnavailable)
	io.WriteString(w, unbuiltPage)
}
