package browsertest

import (
	"fmt"
	"hash/crc32"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// What the browser may do to what is kept, as scripts.
const (
	// full makes every write find no room.
	full = `Storage.prototype.setItem = () => { throw new DOMException("no room", "QuotaExceededError"); }, true`
	// denied makes the page have no storage of either kind, as a private window may.
	denied = `for (const name of ["localStorage", "sessionStorage", "indexedDB"]) {
		Object.defineProperty(window, name, { configurable: true, get() { throw new DOMException("denied", "SecurityError"); } });
	}`
	// past sets the clock back by ten years.
	past = `Date = class extends Date {
		constructor(...at) { at.length ? super(...at) : super(Date.now()); }
		static now() { return super.now() - 10 * 365 * 864e5; }
	}`
	// said is what the page has said last, and on the panel of studies.
	said = `document.querySelector("#message")?.textContent + " " + document.querySelector("#panel").textContent`
)

// waitKept waits until the page says of the study that it is so.
func (p *Page) waitKept(state string) {
	p.t.Helper()
	p.WaitTrue(`document.querySelector("#kept")?.textContent === ` + quote(state))
}

// set sets the first number of the selected car and waits until the page says of the
// study that it is so.
func (p *Page) set(value, state string) {
	p.t.Helper()
	openPanel(p, "compare")
	typeInto(p, "#selected-car .slider input", value)
	p.WaitTrue(sliderValue + ` === ` + quote(strings.Replace(value, "-", "−", 1)+".00"))
	p.waitKept(state)
}

// waitSaid waits until the page says something with these words.
func (p *Page) waitSaid(words string) {
	p.t.Helper()
	p.WaitTrue(fmt.Sprintf(`(%s).includes(%s)`, said, quote(words)))
}

// TestFullBrowser has no room for a save: the page says what to do, the work stays on the
// page and is kept as soon as there is room.
func TestFullBrowser(t *testing.T) {
	page := Open(t, Options{})
	page.set("-11", "saved")
	Eval[bool](page, `window.setItem = Storage.prototype.setItem, `+full)
	page.set("-7", "not kept")
	page.waitSaid("is full: save the study to a file")
	page.Shot("full")
	Eval[bool](page, `Storage.prototype.setItem = window.setItem, true`)
	page.set("-8", "saved")
	page.Reload()
	page.WaitTrue(sliderValue + ` === "−8.00"`)
}

// TestDeniedStorage opens the page where it may keep nothing: it works, and says so.
func TestDeniedStorage(t *testing.T) {
	page := Open(t, Options{Before: denied})
	page.set("-7", "not kept")
	page.waitSaid("does not let this page keep anything: save the study to a file before you leave")
	openPanel(page, "study")
	page.WaitTrue(`!!document.querySelector("#save-file")`)
}

func TestClockSetBack(t *testing.T) {
	page := Open(t, Options{})
	page.set("-11", "saved")
	page.Do(before(past))
	page.Reload()
	page.WaitTrue(sliderValue + ` === "−11.00"`)
	page.set("-6", "saved")
	page.Reload()
	page.WaitTrue(sliderValue + ` === "−6.00"`)
}

// lastRevision is a script that returns the key of the revision written last.
const lastRevision = `Object.keys(localStorage).filter((k) => k.startsWith("toewright/study/"))
	.sort((a, b) => parseInt(b.split("/")[3]) - parseInt(a.split("/")[3]))[0]`

// TestDamagedRevision damages the revision that counts. The one before it opens, with a
// word of it, and what is left of the damaged one stays.
func TestDamagedRevision(t *testing.T) {
	page := Open(t, Options{})
	page.set("-11", "saved")
	page.set("-7", "saved")
	key := Eval[string](page, lastRevision)
	Evalf[bool](page, `localStorage.setItem(%[1]s, localStorage.getItem(%[1]s).slice(0, 300)), true`, quote(key))
	page.Reload()
	page.WaitTrue(sliderValue + ` === "−11.00"`)
	page.waitSaid("revision 3 cannot be opened, it is damaged")
	page.set("-5", "saved")
	if n := Evalf[int](page, `localStorage.getItem(%s).length`, quote(key)); n != 300 {
		t.Errorf("%d letters of the damaged revision are left, want the 300 that there were", n)
	}
}

// newer returns a head as a later version of the program may write it.
func newer(text string) string {
	_, body, _ := strings.Cut(text, "\n")
	return fmt.Sprintf("toewright-head/9 %08x\n%s", crc32.ChecksumIEEE([]byte("toewright-head/9\n"+body)), body)
}

// TestNewerStudy finds a study that a later version of the program has saved: it stays
// closed and as it is, and the page says why. What others keep stays too.
func TestNewerStudy(t *testing.T) {
	page := Open(t, Options{})
	page.set("-11", "saved")
	key := Eval[string](page, `Object.keys(localStorage).find((k) => k.startsWith("toewright/head/"))`)
	theirs := newer(Evalf[string](page, `localStorage.getItem(%s)`, quote(key)))
	Evalf[bool](page, `localStorage.setItem(%s, %s), localStorage.setItem("toewright/later/x", "1"), localStorage.setItem("else", "2"), true`,
		quote(key), quote(theirs))
	page.Reload()
	page.waitSaid("was written by a newer version of this program: reload the page to update it")
	page.set("-4", "saved")
	for k, want := range map[string]string{key: theirs, "toewright/later/x": "1", "else": "2"} {
		if got := Evalf[string](page, `localStorage.getItem(%s)`, quote(k)); got != want {
			t.Errorf("%s is %q now, want it as it was, %q", k, got, want)
		}
	}
}

// TestLostStorage has the browser lose all of its localStorage: what the page said is
// saved comes back from the copy.
func TestLostStorage(t *testing.T) {
	page := Open(t, Options{})
	page.set("-11", "saved")
	page.set("-7", "saved")
	page.Do(chromedp.Navigate("about:blank"))
	page.Do(before(`if (!sessionStorage.lost) { localStorage.clear(); sessionStorage.lost = 1; }`))
	page.Do(chromedp.Navigate(page.Origin() + "/"))
	page.WaitRunning()
	page.WaitTrue(sliderValue + ` === "−7.00"`)
}
