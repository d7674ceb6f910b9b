package browsertest

import (
	"testing"

	"toewright/internal/web"
)

// TestPlainHTTP opens the page by plain http from a name that is not the loopback's, where a
// browser offers neither digests nor a service worker nor a promise to keep: the page starts and
// computes, the study is there after a reload, and the page says what it cannot do.
func TestPlainHTTP(t *testing.T) {
	page := Open(t, Options{Name: reboundName, Web: web.Config{Hosts: []string{reboundName}},
		Expected: []string{"Cross-Origin-Opener-Policy header has been ignored"}})
	if offered := Eval[[]string](page, `[isSecureContext && "a secure context", crypto.subtle && "digests", navigator.serviceWorker && "a service worker",
		navigator.storage && "storage", navigator.clipboard && "the clipboard"].filter(Boolean)`); len(offered) > 0 {
		t.Fatalf("the browser offers %q here: nothing is tried of what it does without", offered)
	}
	page.WaitText("#solver", "ready")

	openPanel(page, "search")
	click(page, "#find")
	page.WaitTrue(says("#message", "found"))

	openPanel(page, "study")
	page.WaitTrue(says("#study-menu-box", "This address is plain http") + " && " + says("#study-menu-box", "it may remove them"))
	typeInto(page, "#study-name", "By plain http")
	page.WaitText("#study-menu strong", "By plain http")
	page.waitKept("saved")
	page.Reload()
	page.WaitText("#study-menu strong", "By plain http")
	page.WaitTrue(`[...document.querySelectorAll(".strip button")].some((b) => b.textContent.includes("found"))`)

	// Without a clipboard a link is there to be copied by hand, and a table to be saved.
	openPanel(page, "study")
	click(page, "#make-link")
	page.WaitTrue(`document.querySelector("#link")?.value.startsWith(location.origin)`)
	openPanel(page, "compare")
	click(page, "#copy-text")
	page.WaitTrue(says("#message", "save the table instead"))
}
