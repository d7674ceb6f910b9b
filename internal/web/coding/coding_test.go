package coding

import (
	"slices"
	"testing"
)

func TestChoose(t *testing.T) {
	all := []Encoding{Brotli, Gzip}
	tests := []struct {
		name, header string
		atHand       []Encoding
		want         Encoding
	}{
		{name: "a browser", header: "gzip, deflate, br, zstd", atHand: all, want: Brotli},
		{name: "no Brotli at hand", header: "gzip, deflate, br", atHand: all[1:], want: Gzip},
		{name: "none at hand", header: "gzip, br", want: Identity},
		{name: "no header", header: "", atHand: all, want: Identity},
		{name: "gzip alone", header: "gzip", atHand: all, want: Gzip},
		{name: "Brotli refused", header: "br;q=0, gzip;q=0.5", atHand: all, want: Gzip},
		{name: "spaces and capitals", header: " GZIP ; q=1.0 ", atHand: all, want: Gzip},
		{name: "weight not a number", header: "br;q=much", atHand: all, want: Identity},
		{name: "star", header: "*", atHand: all, want: Identity},
		{name: "unknown coding", header: "zstd", atHand: all, want: Identity},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			has := func(e Encoding) bool { return slices.Contains(tt.atHand, e) }
			if got := Choose(tt.header, has); got != tt.want {
				t.Errorf("Choose(%q) = %q, want %q", tt.header, got, tt.want)
			}
		})
	}
}
