package browsertest

import (
	"fmt"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/chromedp/chromedp"

	"toewright/internal/web"
)

// change puts another version on the server, at the same address.
func change(page *Page, files fstest.MapFS) {
	page.Stop()
	page.Use(web.Config{Assets: files})
	page.Start()
}

func TestUpdateWaitsForTheReader(t *testing.T) {
	page := Open(t, Options{Web: web.Config{Assets: Version(t, "old")}})
	page.WaitOfflineReady()
	change(page, Version(t, "new"))
	Eval[string](page, AskForUpdate)
	page.WaitTrue(`toewright.updateWaiting`)

	page.Reload()
	page.WaitText("#solver", "ready")
	if got := Eval[string](page, ShownVersion); got != "old" {
		t.Errorf("version after a reload = %q, want old, until the reader agrees", got)
	}
	page.WaitTrue(`toewright.updateWaiting`)
	Eval[any](page, `toewright.update(), null`)
	page.WaitTrue(ShownVersion + ` === "new"`)
	page.WaitRunning()
	page.Offline()
	page.Reload()
	page.WaitText("#solver", "ready")
	if got := Eval[string](page, ShownVersion); got != "new" {
		t.Errorf("version without the server = %q, want new", got)
	}
}

// waitTheWork waits until the number is there that [Page.edit] has set.
func (p *Page) waitTheWork() {
	p.t.Helper()
	p.WaitTrue(sliderValue + ` === "−11.50"`)
}

// edit sets the first number of the selected car, which is to outlive what comes.
func (p *Page) edit() {
	p.t.Helper()
	openPanel(p, "compare")
	typeInto(p, "#selected-car .slider input", "-11.5")
	p.waitTheWork()
	p.waitKept("saved")
}

// countSets is an expression for how many sets of the page's files the browser keeps.
const countSets = `caches.keys().then((names) => names.length)`

// TestFailedUpdateKeepsThePage has a version come that is broken half-way: the page goes on
// with its own, with a server and without, and nothing of the other is left.
func TestFailedUpdateKeepsThePage(t *testing.T) {
	page := Open(t, Options{Web: web.Config{Assets: Version(t, "old")}})
	page.WaitOfflineReady()
	page.edit()
	page.Forgive() // What is missing is to be complained of.
	for name, spoil := range map[string]func(){
		"a file is missing":     func() { page.Lose("/web/worker.js") },
		"a file is cut off":     func() { page.Cut("/web/page.css") },
		"the server goes away":  func() { page.Vanish("/web/worker.js") },
		"files of two versions": func() { page.Swap("/web/page.css", Version(t, "third")) },
	} {
		page.Stop()
		page.Use(web.Config{Assets: Version(t, "broken")})
		spoil()
		page.Start()
		Eval[string](page, AskForUpdate)
		page.WaitTrue(`navigator.serviceWorker.getRegistration().then((r) => !r.installing && !r.waiting)`)
		if got := Eval[int](page, countSets); got != 1 {
			t.Errorf("%s: %d sets are kept, want 1: nothing may be left of the failed update", name, got)
		}
	}
	page.Offline()
	page.Reload()
	page.WaitText("#solver", "ready")
	page.waitTheWork()
	if got := Eval[string](page, ShownVersion); got != "old" {
		t.Errorf("version after failed updates = %q, want old", got)
	}
}

// workerText is an expression for the script that the next worker of this page runs.
const workerText = `fetch(document.querySelector("script[data-worker]").dataset.worker).then((r) => r.text())`

// TestUpdateWithTwoTabs changes to a new version in one tab: the other goes on with all
// files of its own, also without a server, until it changes too.
func TestUpdateWithTwoTabs(t *testing.T) {
	first := Open(t, Options{Web: web.Config{Assets: Version(t, "old")}})
	first.WaitOfflineReady()
	first.edit()
	second := first.SecondTab(Options{})
	change(first, Version(t, "new"))
	Eval[string](first, AskForUpdate)
	for _, tab := range []*Page{first, second} {
		tab.WaitTrue(`toewright.updateWaiting`)
	}
	first.Forgive()
	second.Forgive()
	first.Stop() // All of both versions is on the device.
	Eval[any](first, `toewright.update(), null`)
	first.WaitTrue(ShownVersion + ` === "new"`)
	first.WaitText("#solver", "ready")
	first.waitTheWork()

	second.WaitTrue(`navigator.serviceWorker.controller.state === "activated"`)
	for tab, want := range map[*Page]string{first: "// version new", second: "// version old"} {
		if got := Eval[string](tab, workerText); !strings.HasSuffix(got, want) {
			t.Errorf("the next worker of a tab ends with %q, want %q", got[max(0, len(got)-20):], want)
		}
	}
	if got := Eval[string](second, ShownVersion); got != "old" {
		t.Errorf("version of the other tab = %q, want old, until its reader agrees", got)
	}
	second.WaitTrue(countSets + `.then((n) => n === 2)`)
	Eval[any](second, `toewright.update(), null`)
	second.WaitTrue(ShownVersion + ` === "new"`)
	second.WaitText("#solver", "ready")
	second.waitTheWork()
	first.Reload()
	first.WaitTrue(countSets + `.then((n) => n === 1)`) // No tab runs the old one.
	first.waitTheWork()
}

// keptFiles is an expression for the addresses of the files of the only set that is kept.
const keptFiles = `caches.keys().then((sets) => caches.open(sets[0])).then((set) => set.keys())
	.then((files) => files.map((file) => file.url))`

// spoil is a script that flips a bit in a file that is kept. The length stays, as does what
// the host said of it.
const spoil = `(async (url) => {
	const set = await caches.open((await caches.keys())[0]);
	const kept = await set.match(url, { ignoreVary: true });
	const bytes = new Uint8Array(await kept.arrayBuffer());
	bytes[bytes.length >> 1] ^= 1;
	await set.put(url, new Response(bytes, { headers: kept.headers }));
	return true;
})(%q)`

// whole is an expression for whether each file that is kept and named by its content has it.
const whole = `(async () => {
	const set = await caches.open((await caches.keys())[0]);
	for (const request of await set.keys()) {
		const digest = request.url.split("?")[1];
		const kept = await set.match(request, { ignoreVary: true });
		const sum = await crypto.subtle.digest("SHA-256", await kept.arrayBuffer());
		const hex = [...new Uint8Array(sum)].map((b) => b.toString(16).padStart(2, "0")).join("");
		if (digest && !hex.startsWith(digest)) return false;
	}
	return true;
})()`

// TestDamagedFilesHeal flips one bit of each file that is kept, one file after the other: the
// page opens each time with the work on it, and the file is as it was.
func TestDamagedFilesHeal(t *testing.T) {
	page := Open(t, Options{})
	page.WaitOfflineReady()
	page.edit()
	files := Eval[[]string](page, keptFiles)
	for _, file := range files {
		Evalf[bool](page, spoil, file)
		page.Reload()
		page.waitTheWork()
		if !strings.Contains(file, "icon") && !strings.Contains(file, "manifest") { // asked for when the browser likes
			page.WaitTrue(whole)
		}
	}
	if len(files) < 10 {
		t.Errorf("%q are kept, want all files of the page", files)
	}
}

// respoil is a script that puts another program in the place of the one that is kept, made of its bytes.
const respoil = `(async (change) => {
	const set = await caches.open((await caches.keys())[0]);
	const [program] = (await set.keys()).filter((file) => file.url.includes("app.wasm"));
	const kept = await set.match(program, { ignoreVary: true });
	await set.put(program, new Response(change(new Uint8Array(await kept.arrayBuffer())), { headers: kept.headers }));
	return true;
})(%s)`

// TestDamagedProgramHeals damages the program at its ends and about the seams of the pieces by which
// it is checked, cuts it short and lengthens it: the page opens with the work on it, and keeps the
// program as it was.
func TestDamagedProgramHeals(t *testing.T) {
	page := Open(t, Options{})
	page.WaitOfflineReady()
	page.edit()
	size := Eval[int](page, `Number(document.querySelector("script[data-program]").dataset.pieceSize)`)
	flip := func(at int) string {
		return fmt.Sprintf("(b) => { b[(b.length + %d) %% b.length] ^= 128; return b; }", at)
	}
	for _, change := range []string{
		flip(0), flip(size - 1), flip(size), flip(2*size - 1), flip(2 * size), flip(-1),
		"(b) => b.subarray(0, -1)",
		fmt.Sprintf("(b) => b.subarray(0, b.length - b.length %% %d)", size),
		"(b) => new Uint8Array([...b.subarray(0, 8), 0, 1, 0, ...b.subarray(8)])",
		fmt.Sprintf("(b) => new Blob([b, b.subarray(0, %d)])", size),
		"() => new Uint8Array()",
	} {
		Evalf[bool](page, respoil, change)
		page.Reload()
		page.waitTheWork()
		page.WaitTrue(whole)
	}
}

// TestDamagedFilesWithoutAServer damages what the page cannot be without, with the server
// gone: it says so, and opens with the work on it once the server is back.
func TestDamagedFilesWithoutAServer(t *testing.T) {
	page := Open(t, Options{Expected: []string{"loading wasm failed", "Failed to find a valid digest", "is not defined"}})
	page.WaitOfflineReady()
	page.edit()
	page.Forgive()
	for _, file := range Eval[[]string](page, keptFiles) {
		if !regexp.MustCompile(`/$|app\.js|boot\.js|wasm`).MatchString(file) {
			continue
		}
		Evalf[bool](page, spoil, file)
		page.Stop()
		page.Do(chromedp.Reload())
		page.WaitTrue(`/with a network/.test(document.body.innerText) || getComputedStyle(document.querySelector(".late")).animationName === "late"`)
		page.Start()
		page.Reload()
		page.waitTheWork()
		page.WaitTrue(whole)
	}
}

// TestDamagedAndOutOfDate damages a file that the server no longer has, as it has a new
// version by now: the page opens as that, with the work on it, and is kept.
func TestDamagedAndOutOfDate(t *testing.T) {
	page := Open(t, Options{Web: web.Config{Assets: Version(t, "old")}, Expected: []string{"Failed to find a valid digest"}})
	page.WaitOfflineReady()
	page.edit()
	page.Forgive()
	for _, file := range Eval[[]string](page, keptFiles) {
		if strings.Contains(file, "page.css") {
			Evalf[bool](page, spoil, file)
		}
	}
	change(page, Version(t, "new"))
	page.Do(chromedp.Reload())
	page.WaitTrue(ShownVersion + ` === "new"`)
	page.WaitRunning()
	page.waitTheWork()
	page.WaitTrue(`caches.match("./").then(Boolean)`) // That of the new version: the old one's was let go.
	page.WaitTrue(countSets + `.then((n) => n === 1)`)
	page.Offline()
	page.Reload()
	page.waitTheWork()
	if got := Eval[string](page, ShownVersion); got != "new" {
		t.Errorf("version without the server = %q, want new", got)
	}
}
