package browsertest

import (
	"bytes"
	"compress/zlib"
	"encoding/base64"
	"strings"
	"testing"

	"toewright/app/store"
	"toewright/internal/study"
)

// linkTo returns the fragment of a link that carries any text where a study should be.
func linkTo(t *testing.T, text []byte) string {
	t.Helper()
	var b bytes.Buffer
	w := zlib.NewWriter(&b)
	if _, err := w.Write(text); err != nil {
		t.Fatal(err)
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return "#study=1." + base64.RawURLEncoding.EncodeToString(b.Bytes())
}

func TestHostileLinkIsRefused(t *testing.T) {
	tests := []struct{ name, fragment, says string }{
		{"no base64", "#study=1.%3Cscript%3E", "the link does not carry a whole study"},
		{"grows a thousandfold", linkTo(t, make([]byte, 40<<20)), "the link does not carry a whole study"},
		{"deep", linkTo(t, []byte(strings.Repeat("[", 100_000))), "max depth"},
		{"of a newer version", "#study=9.abc", "newer version"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			page := Open(t, Options{Path: tt.fragment})
			page.WaitTrue(`document.querySelector("#message")?.textContent.includes(` + quote(tt.says) + `)`)
			page.WaitText("#solver", "ready")
			if got := Eval[string](page, `location.hash`); got != "" {
				t.Errorf("the address still ends in %.40q: a reload would try it again", got)
			}
		})
	}
}

func TestLinkCannotPutCodeIntoThePage(t *testing.T) {
	d := study.Template{Key: "double-wishbone-rack"}.Document()
	d.Name = `"><img src=x onerror="window.ran = true">`
	d.Candidates[0].Name = `</style><script>window.ran = true</script>`
	link, err := store.Link(d)
	if err != nil {
		t.Fatal(err)
	}
	page := Open(t, Options{Path: "#" + link})
	page.WaitTrue(`document.body.textContent.includes(` + quote(d.Name) + `)`)
	if Eval[bool](page, `!!window.ran || !!document.querySelector("[onerror]")`) {
		t.Error("a name in the link became part of the document")
	}
}
