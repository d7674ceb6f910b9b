package web

import (
	"slices"
	"testing"
)

func TestChoose(t *testing.T) {
	all := []encoding{brotlied, gzipped}
	tests := []struct {
		name, header string
		atHand       []encoding
		want         encoding
	}{
		{name: "a browser", header: "gzip, deflate, br, zstd", atHand: all, want: brotlied},
		{name: "no Brotli at hand", header: "gzip, deflate, br", atHand: all[1:], want: gzipped},
		{name: "none at hand", header: "gzip, br", want: identity},
		{name: "no header", header: "", atHand: all, want: identity},
		{name: "gzip alone", header: "gzip", atHand: all, want: gzipped},
		{name: "Brotli refused", header: "br;q=0, gzip;q=0.5", atHand: all, want: gzipped},
		{name: "spaces and capitals", header: " GZIP ; q=1.0 ", atHand: all, want: gzipped},
		{name: "weight not a number", header: "br;q=much", atHand: all, want: identity},
		{name: "star", header: "*", atHand: all, want: identity},
		{name: "unknown coding", header: "zstd", atHand: all, want: identity},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			has := func(e encoding) bool { return slices.Contains(tt.atHand, e) }
			if got := choose(tt.header, has); got != tt.want {
				t.Errorf("choose(%q) = %q, want %q", tt.header, got, tt.want)
			}
		})
	}
}
