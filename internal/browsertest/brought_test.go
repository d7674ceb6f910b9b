package browsertest

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"toewright/app/store"
	"toewright/internal/study"
)

// openName is the name of the study that is open, as the page shows it.
const openName = `document.querySelector("#study-menu strong")?.textContent`

// lostWithin is how long after a step the plug may be pulled.
const lostWithin = time.Second

// named returns a study of a template under another name.
func named(t *testing.T, name string) *study.Document {
	t.Helper()
	d := study.Template{Key: "strut-rack"}.Document()
	d.Name = name
	return d
}

// openFile chooses a file on the page's own field for files.
func (p *Page) openFile(d *study.Document) {
	p.t.Helper()
	text, err := study.Encode(d)
	if err != nil {
		p.t.Fatal(err)
	}
	name := filepath.Join(p.t.TempDir(), "study.json")
	if err := os.WriteFile(name, text, 0o644); err != nil {
		p.t.Fatal(err)
	}
	openPanel(p, "study")
	p.WaitTrue(`!!document.querySelector("#open-file")`)
	p.Do(chromedp.SetUploadFiles("#open-file", []string{name}))
	p.WaitTrue(`!document.querySelector("#study-menu-box")`) // which closes once the file is open
}

// pulledAndBack waits as long as a save may take, loads the page anew without its server and
// checks that a study of a name is open and in the list.
func (p *Page) pulledAndBack(name string) {
	p.t.Helper()
	time.Sleep(lostWithin)
	p.Stop()
	p.Reload()
	p.WaitTrue(openName + " === " + quote(name))
	p.WaitTrue(`document.querySelector("#kept").textContent === "saved"`)
	openPanel(p, "study")
	p.WaitTrue(`[...document.querySelectorAll("#studies > li")].some((row) => row.querySelector(".tag") && row.querySelector("strong").textContent === ` + quote(name) + `)`)
	p.Start()
}

// TestWhatIsBroughtIsKept opens a study from a file, from a template and from a link, edits
// nothing, and pulls the plug.
func TestWhatIsBroughtIsKept(t *testing.T) {
	link, err := store.Link(named(t, "from a link"))
	if err != nil {
		t.Fatal(err)
	}
	template := study.Templates()[slices.IndexFunc(study.Templates(), func(t study.Template) bool { return t.Key == "solid-axle-rack" })]
	for _, tt := range []struct {
		from, name string
		bring      func(*Page)
	}{
		{"file", "from a file", func(p *Page) { p.openFile(named(t, "from a file")) }},
		{"template", template.Start().Name, func(p *Page) {
			openPanel(p, "study")
			click(p, "#new-study")
			click(p, "#template-"+template.Key)
		}},
		{"link", "from a link", func(p *Page) {
			Eval[chromedp.Void](p, `void (location.hash = `+quote(link)+`)`)
		}},
	} {
		t.Run(tt.from, func(t *testing.T) {
			page := Open(t, Options{})
			page.WaitOfflineReady()
			tt.bring(page)
			page.WaitTrue(openName + " === " + quote(tt.name))
			page.pulledAndBack(tt.name)
			if hash := Eval[string](page, `location.hash`); hash != "" {
				t.Errorf("the address still ends in %.20q", hash)
			}
		})
	}
	t.Run("link that is opened first", func(t *testing.T) {
		page := Open(t, Options{Path: "#" + link})
		page.WaitOfflineReady()
		page.WaitTrue(openName + ` === "from a link"`)
		page.pulledAndBack("from a link")
	})
}

// TestTwoStudiesOfOneName opens two files alike but for a note, in one tab and in two: each
// reload opens the one that was open in that tab.
func TestTwoStudiesOfOneName(t *testing.T) {
	first, second := named(t, "alike"), named(t, "alike")
	first.Revision, second.Revision = "A", "B"
	page := Open(t, Options{})
	page.WaitOfflineReady()
	shows := func(p *Page, revision string) {
		t.Helper()
		openPanel(p, "study")
		p.WaitTrue(`document.querySelector("#study-revision")?.value === ` + quote(revision))
	}
	page.openFile(first)
	shows(page, "A")
	page.openFile(second)
	shows(page, "B")
	page.pulledAndBack("alike")
	shows(page, "B")
	other := page.SecondTab(Options{})
	openPanel(other, "study")
	click(other, `#studies [aria-label="Open alike"]:not([disabled])`)
	shows(other, "A")
	time.Sleep(lostWithin)
	page.Reload()
	shows(page, "B")
	other.Reload()
	shows(other, "A")
	if n := keptStudies(page); n != 2 {
		t.Errorf("%d studies are kept, want both", n)
	}
}

// TestUndoAfterAReload edits twice, pulls the plug after each, and takes both back.
func TestUndoAfterAReload(t *testing.T) {
	page := Open(t, Options{})
	page.WaitOfflineReady()
	openPanel(page, "compare")
	before := Eval[string](page, sliderValue)
	for _, value := range []string{"−11.00", "−7.00"} {
		typeInto(page, "#selected-car .slider input", value)
		page.WaitTrue(sliderValue + " === " + quote(value))
		time.Sleep(lostWithin)
		page.Stop()
		page.Reload()
		page.WaitTrue(sliderValue + " === " + quote(value))
		page.Start()
	}
	for _, value := range []string{"−11.00", before} {
		page.WaitTrue(`!document.querySelector("#undo").disabled`) // the steps are read after the study shows
		click(page, "#undo")
		page.WaitTrue(sliderValue + " === " + quote(value))
		time.Sleep(lostWithin)
		page.Reload()
		page.WaitTrue(sliderValue + " === " + quote(value))
	}
	if !Eval[bool](page, `document.querySelector("#undo").disabled`) {
		t.Error("there is still something to undo")
	}
}

// padShows is what the run sheet shows: the fields of the row that is typed, which one it is, and the rows that were read.
const padShows = `["Travel", "Left", "Right"].map((f) => document.querySelector("#pad-" + f)?.value).join("|")
	+ " at " + document.querySelector(".pad-input.current")?.id.slice(4)
	+ ", " + [...document.querySelectorAll(".run-rows tbody tr")].filter((row) => row.querySelector(".cell"))
		.map((row) => [...row.querySelectorAll(".cell")].map((c) => c.textContent).join(" ")).join("; ")`

// pressKeys presses keys of the keypad, Next at every |.
func pressKeys(p *Page, keys string) {
	p.t.Helper()
	for _, key := range strings.Split(keys, "") {
		find := `document.querySelector('.pad-keys [data-key="` + key + `"]')`
		if key == "|" {
			find = `document.querySelector("#pad-next")`
		}
		Eval[chromedp.Void](p, `void `+find+`.click()`)
		Eval[bool](p, `new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(true))))`)
	}
}

// TestKeypadShowsWhatItHas types rows on a phone: the fields show what the next press of Next
// takes, and half a row of another run outlives the plug.
func TestKeypadShowsWhatItHas(t *testing.T) {
	page := Open(t, Options{Width: 390, Height: 844, Touch: true})
	page.WaitOfflineReady()
	click(page, "#step-readings")
	click(page, "#new-run")
	page.WaitTrue(padShows + ` === "−60|| at Stack, "`)
	steps := []struct{ keys, want string }{
		{"||1|2|", "−55|| at Left, −60 1.00 2.00"},
		{"3|", "−55|3| at Right, −60 1.00 2.00"},
		{"|", "−50|| at Left, −60 1.00 2.00; −55 3.00 –"},
		{"4.5", "−50|4.5| at Left, −60 1.00 2.00; −55 3.00 –"},
	}
	for _, step := range steps {
		if pressKeys(page, step.keys); Eval[string](page, padShows) != step.want {
			t.Fatalf("after %q the page shows %q, want %q", step.keys, Eval[string](page, padShows), step.want)
		}
	}
	page.Shot("keypad half a row")
	time.Sleep(lostWithin)
	page.Stop()
	page.Reload()
	page.WaitTrue(padShows + " === " + quote(steps[len(steps)-1].want))
	page.Start()
	pressKeys(page, "||")
	Eval[chromedp.Void](page, `void document.querySelector("#pad-Travel").focus()`)
	page.WaitTrue(`document.querySelector(".pad-input.current").id === "pad-Travel"`)
	pressKeys(page, "525|")
	page.WaitTrue(`document.querySelector("#pad-fault")?.textContent.includes("525 mm")`)
	page.Shot("keypad refuses")
	pressKeys(page, "⌫⌫⌫±60|9||")
	page.WaitTrue(`document.querySelector("#pad-fault")?.textContent.includes("1.00 mm left was read already")`)
	page.Shot("keypad asks")
}
