package store

import (
	"bytes"
	"compress/zlib"
	"encoding/base64"
	"errors"
	"io"
)

// maxStudy is the size of the largest study file, maxPacked what it takes at most if
// nothing in it can be compressed: 4 letters for 3 bytes, and some more.
const (
	maxStudy  = 4 << 20
	maxPacked = maxStudy/3*4 + 4096
)

// errUnpack is what a packed text that is not whole, or too large, is refused with.
var errUnpack = errors.New("its compressed part is cut off or altered")

// pack compresses a text, with a checksum, into letters, digits, - and _.
func pack(text []byte) string {
	var b bytes.Buffer
	w, err := zlib.NewWriterLevel(&b, zlib.BestCompression)
	if err != nil {
		panic(err) // the level is a constant that exists
	}
	w.Write(text) // a bytes.Buffer takes all
	w.Close()
	return base64.RawURLEncoding.EncodeToString(b.Bytes())
}

// unpack is the inverse of pack. What would grow beyond a study's greatest size is
// refused before it does.
func unpack(packed string) ([]byte, error) {
	if len(packed) > maxPacked {
		return nil, errUnpack
	}
	b, err := base64.RawURLEncoding.Strict().DecodeString(packed)
	if err != nil {
		return nil, errUnpack
	}
	rest := bytes.NewReader(b)
	r, err := zlib.NewReader(rest)
	if err != nil {
		return nil, errUnpack
	}
	text, err := io.ReadAll(io.LimitReader(r, maxStudy+1))
	if err != nil || len(text) > maxStudy || rest.Len() > 0 {
		return nil, errUnpack
	}
	return text, nil
}
