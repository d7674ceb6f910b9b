package main

import (
	"strings"
	"testing"
)

const elements = `package app

type HTMLA interface {
	HTML
	Href(v string) HTMLA
	Text(v any) HTMLA
}

func A() HTMLA {
	e := &htmlA{htmlElement{tag: "a"}}
	return e
}

type htmlA struct {
	htmlElement
}

func (e *htmlA) Href(v string) HTMLA {
	e.setAttr("href", v)
	return e
}

func (e *htmlA) Text(v any) HTMLA {
	return e.Body(v)
}

type HTMLLink interface {
	HTML
	Href(v string) HTMLLink
}

func Link() HTMLLink {
	e := &htmlLink{htmlElement{tag: "link"}}
	return e
}

type htmlLink struct {
	htmlElement
}

func (e *htmlLink) Href(v string) HTMLLink {
	e.setAttr("href", v)
	return e
}
`

func TestShareElements(t *testing.T) {
	out, err := shareElements([]byte(elements))
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct {
		text  string
		count int
	}{
		{"type htmlShared struct", 1},
		{"func A() HTMLShared", 1},
		{"func Link() HTMLShared", 1},
		{"func (e *htmlShared) Href(v string) HTMLShared", 1},
		{"interface", 0},
		{") Text(", 0},
		{"type HTMLShared = *htmlShared", 1},
		{"type HTMLA = HTMLShared", 1},
		{"type HTMLLink = HTMLShared", 1},
	} {
		if got := strings.Count(string(out), tt.text); got != tt.count {
			t.Errorf("%q is there %d times, want %d", tt.text, got, tt.count)
		}
	}
}

func TestShareElementsRefuses(t *testing.T) {
	for _, tt := range []struct{ name, src, want string }{
		{"no Go", "package", "expected"},
		{"no elements", "package app", "no elements"},
		{"another method", strings.Replace(elements, `setAttr("href", v)`, `setAttr("src", v)`, 1), "Href is not the same"},
		{"another struct", strings.Replace(elements, "struct {\n\thtmlElement", "struct {\n\thtmlElement\n\tx int", 1), "htmlShared is not the same"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			if _, err := shareElements([]byte(tt.src)); err == nil || !strings.Contains(err.Error(), tt.want) {
				t.Errorf("error %v, want one with %q", err, tt.want)
			}
		})
	}
}
