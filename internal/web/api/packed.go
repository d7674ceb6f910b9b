package api

import (
	"compress/gzip"
	"net/http"
	"sync"

	"toewright/internal/web/coding"
)

// packed returns where to write an answer so that it goes out packed, if its caller
// accepts that: an answer is lists of numbers, a quarter as long when packed.
func packed(w http.ResponseWriter, r *http.Request) http.ResponseWriter {
	w.Header().Add("Vary", "Accept-Encoding")
	if coding.Choose(r.Header.Get("Accept-Encoding"), onlyGzip) == coding.Identity {
		return w
	}
	w.Header().Set("Content-Encoding", string(coding.Gzip))
	return packing{w}
}

func onlyGzip(e coding.Encoding) bool { return e == coding.Gzip }

// packers are at rest between answers, as each is near a megabyte. They pack as fast as can
// be: the next level saves a tenth and takes twice the time.
var packers = sync.Pool{New: func() any {
	z, err := gzip.NewWriterLevel(nil, gzip.BestSpeed)
	if err != nil {
		panic(err) // only of a level that there is not
	}
	return z
}}

// packing packs what is written to it, which is a whole answer at once.
type packing struct{ http.ResponseWriter }

// Write implements [http.ResponseWriter].
func (p packing) Write(answer []byte) (int, error) {
	z := packers.Get().(*gzip.Writer)
	defer packers.Put(z)
	z.Reset(p.ResponseWriter)
	n, err := z.Write(answer)
	if err == nil {
		err = z.Close()
	}
	return n, err
}
