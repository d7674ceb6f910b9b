// Package url has as much of its namesake in the standard library as a page needs that
// hears of addresses from its browser only.
package url

import (
	"errors"
	"strconv"
	"strings"
)

// URL is an address: scheme://host/path?query#fragment. Its parts stand as they are
// written, but for the fragment.
type URL struct {
	Scheme, Host, Path, RawQuery string

	Fragment string // without escapes
	written  string // with them
}

// Parse takes an address apart. Without a scheme it is a path; without slashes behind
// the scheme all the rest is.
func Parse(address string) (*URL, error) {
	if strings.ContainsAny(address, " \t\r\n") {
		return nil, errors.New("an address holds no blanks")
	}
	u := &URL{}
	address, u.written, _ = strings.Cut(address, "#")
	u.Fragment = unescape(u.written)
	address, u.RawQuery, _ = strings.Cut(address, "?")
	if scheme, rest, ok := strings.Cut(address, ":"); ok && !strings.Contains(scheme, "/") {
		u.Scheme, address = strings.ToLower(scheme), rest
	}
	if rest, ok := strings.CutPrefix(address, "//"); ok {
		slash := strings.IndexByte(rest+"/", '/')
		u.Host, address = rest[:slash], rest[slash:]
	}
	u.Path = address
	return u, nil
}

// Hostname returns the host without its port.
func (u *URL) Hostname() string {
	if colon := strings.LastIndexByte(u.Host, ':'); colon > strings.LastIndexByte(u.Host, ']') {
		return u.Host[:colon]
	}
	return u.Host
}

// String puts the address together again.
func (u *URL) String() string {
	var b strings.Builder
	add := func(mark, part string) {
		if part != "" {
			b.WriteString(mark + part)
		}
	}
	add("", u.Scheme)
	if u.Scheme != "" {
		b.WriteByte(':')
	}
	add("//", u.Host)
	add("", u.Path)
	add("?", u.RawQuery)
	if u.Fragment == unescape(u.written) {
		add("#", u.written)
	} else {
		add("#", u.Fragment)
	}
	return b.String()
}

// unescape replaces %41 by A and so on. What is no escape stays.
func unescape(s string) string {
	var out []byte
	for i := 0; i < len(s); i++ {
		if s[i] == '%' && i+3 <= len(s) {
			if code, err := strconv.ParseUint(s[i+1:i+3], 16, 8); err == nil {
				out = append(out, byte(code))
				i += 2
				continue
			}
		}
		out = append(out, s[i])
	}
	return string(out)
}
