package browsertest

import (
	"fmt"
	"math/rand/v2"
	"net/http"
	"path"
	"regexp"
	"slices"
	"strconv"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"toewright/internal/web"
)

// noteLabels is a script that notes what the page says while its program loads.
const noteLabels = `window.labels = [];
addEventListener("DOMContentLoaded", () => {
	const label = document.querySelector("#app-wasm-loader-label");
	new MutationObserver(() => {
		labels.push(label.textContent);
		fetch("seen");
	}).observe(label, { childList: true, characterData: true, subtree: true });
})`

// slowly serves the program in parts, after each of which it waits until the page has said how much
// there is.
func slowly(t *testing.T) http.Handler {
	t.Helper()
	whole, err := web.NewHandler(web.Config{})
	if err != nil {
		t.Fatal(err)
	}
	seen := make(chan struct{}, 1)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		switch path.Base(r.URL.Path) {
		case "seen":
			select {
			case seen <- struct{}{}:
			default:
			}
			return
		case "app.wasm":
			w = slow{w, seen}
		}
		whole.ServeHTTP(w, r)
	})
}

// slow waits after each part of a write, at most for longestStart.
type slow struct {
	http.ResponseWriter
	seen <-chan struct{}
}

// Write implements [http.ResponseWriter].
func (s slow) Write(p []byte) (n int, err error) {
	const parts = 12
	for part := range slices.Chunk(p, len(p)/parts+1) {
		m, err := s.ResponseWriter.Write(part)
		if n += m; err != nil {
			return n, err
		}
		if err := http.NewResponseController(s.ResponseWriter).Flush(); err != nil {
			return n, err
		}
		select {
		case <-s.seen:
		case <-time.After(longestStart):
		}
	}
	return n, nil
}

// share finds the share of the program that is there, in percent.
var share = regexp.MustCompile(`^Starting the solver: (\d+) %$`)

func TestProgressOfTheProgram(t *testing.T) {
	page := Open(t, Options{Handler: slowly(t), Before: noteLabels})
	var shares []int
	for _, label := range Eval[[]string](page, `labels`) {
		m := share.FindStringSubmatch(label)
		if m == nil {
			t.Errorf("the page says %q", label)
			continue
		}
		percent, _ := strconv.Atoi(m[1])
		shares = append(shares, percent)
	}
	if !slices.IsSorted(shares) || len(slices.Compact(slices.Clone(shares))) < 4 || shares[len(shares)-1] > 100 {
		t.Errorf("shares of the program on the way: %v, want several that rise to 100 at most", shares)
	}
}

func TestProgramThatCannotBeHad(t *testing.T) {
	server := Serve(t, Options{})
	server.Lose("/web/app.wasm")
	page := Visit(t, Options{Handler: server.handler, Expected: []string{"status of 404", "loading wasm failed"}})
	page.WaitText("#app-wasm-loader-label", "Error: the program cannot be had: the host answers 404")
}

// noteDrawings is a script that notes which drawings the program shows, by the title
// block, in their order.
const noteDrawings = `window.drawings = [];
addEventListener("DOMContentLoaded", () => new MutationObserver(() => {
	const name = document.querySelector(".title-block dd")?.textContent;
	if (!document.querySelector("#picture") || !name || name === drawings.at(-1)) return;
	drawings.push(name);
}).observe(document.body, { childList: true, characterData: true, subtree: true }))`

// TestReloadShowsNoOtherStudy opens the page anew with a study that is kept: the demo is
// not seen in between.
func TestReloadShowsNoOtherStudy(t *testing.T) {
	page := Open(t, Options{Before: noteDrawings})
	openPanel(page, "study")
	page.WaitTrue(`!!document.querySelector("#study-name")`)
	typeInto(page, "#study-name", "My own car")
	page.waitKept("saved")
	page.Reload()
	page.WaitTrue(`!!document.querySelector("#study-menu")`)
	if got := Eval[[]string](page, `drawings`); !slices.Equal(got, []string{"My own car"}) {
		t.Errorf("drawings shown after a reload: %q, want the study that is kept alone", got)
	}
}

// longestStart is the longest time that a page has to start before it is loaded anew.
const longestStart = 3 * time.Second

// TestReloadAtAnyMoment loads a page with a study that is kept anew at moments of chance while
// it starts, five times: nothing that was begun breaks on what is not there yet or not any more.
// More rounds are by TOEWRIGHT_KILLS; what is rare comes on a busy machine.
func TestReloadAtAnyMoment(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 3))
	for round := range kills(t, 1) {
		t.Run(fmt.Sprint(round), func(t *testing.T) {
			page := Open(t, Options{})
			openPanel(page, "study")
			typeInto(page, "#study-name", "My own car")
			page.WaitText("#study-menu strong", "My own car")
			page.waitKept("saved")
			for range 5 {
				page.Do(chromedp.Reload())
				time.Sleep(time.Duration(random.Int64N(int64(longestStart))))
			}
			page.WaitRunning()
			page.WaitText("#study-menu strong", "My own car")
		})
	}
}
