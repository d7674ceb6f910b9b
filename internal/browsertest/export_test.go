package browsertest

import (
	"encoding/base64"
	"slices"
	"testing"

	"github.com/chromedp/chromedp"
)

// catchFiles keeps what the page hands out as files instead of losing it to a folder.
const catchFiles = `void (() => {
	window.files = [];
	const make = URL.createObjectURL;
	URL.createObjectURL = (blob) => { window.files.push(blob); return make.call(URL, blob); };
})()`

// caught returns an expression for the first file of a type that was handed out.
func caught(kind string) string { return `window.files.find((f) => f.type === ` + quote(kind) + `)` }

// openExports opens the panel from which pictures are saved.
func openExports(t *testing.T) *Page {
	t.Helper()
	page := openSheet(t, Options{Dark: true})
	openPanel(page, "sheet")
	Eval[chromedp.Void](page, catchFiles)
	return page
}

// picture is what an image holds.
type picture struct {
	Width, Height int
	Ink           float64 // part of the pixels that is not the paper's white
	Red           bool    // the pencil is on it
}

// look is a script that decodes a PNG and looks at its pixels.
const look = `(async () => {
	const image = await createImageBitmap(%s);
	const { width, height } = image;
	const context = new OffscreenCanvas(width, height).getContext("2d");
	context.drawImage(image, 0, 0);
	const p = context.getImageData(0, 0, width, height).data;
	let ink = 0, red = false;
	for (let i = 0; i < p.length; i += 4) {
		if (p[i] + p[i + 1] + p[i + 2] < 3 * 250) ink++;
		if (p[i] > 140 && p[i + 1] < 60 && p[i + 2] < 60) red = true;
	}
	return { Width: width, Height: height, Ink: ink / (width * height), Red: red };
})()`

// TestPicturesAsPNG saves the drawing and the curves as images: of the right size, at
// twice the pixels, with something on white paper though the page is dark.
func TestPicturesAsPNG(t *testing.T) {
	for _, tt := range []struct {
		button             string
		width, leastHeight int
		red                bool
	}{
		{"#export-1", 2240, 1520, true},
		{"#export-3", 1200, 680, false},
	} {
		page := openExports(t)
		click(page, tt.button)
		page.WaitTrue(`!!` + caught("image/png"))
		got := Evalf[picture](page, look, caught("image/png"))
		if got.Width != tt.width || got.Height < tt.leastHeight {
			t.Errorf("%s: image of %d by %d, want %d by %d or a little more", tt.button, got.Width, got.Height, tt.width, tt.leastHeight)
		}
		if !(got.Ink > 0.005 && got.Ink < 0.3) {
			t.Errorf("%s: %.4f of the image is ink, want a drawing on white paper", tt.button, got.Ink)
		}
		if got.Red != tt.red {
			t.Errorf("%s: the red pencil is on the image: %t, want %t", tt.button, got.Red, tt.red)
		}
	}
}

// TestPicturesAsSVG saves the drawing as lines and shows the file in a tab of its own,
// where nothing of the page's styles is.
func TestPicturesAsSVG(t *testing.T) {
	page := openExports(t)
	click(page, "#export-0")
	page.WaitTrue(`!!` + caught("image/svg+xml"))
	svg := Eval[string](page, caught("image/svg+xml")+`.text()`)
	tab := blankTab(t)
	tab.Do(chromedp.Navigate("data:image/svg+xml;base64," + base64.StdEncoding.EncodeToString([]byte(svg))))
	tab.Shot("drawing as a file")
	strokes := Eval[[]string](tab, `["tyre", "line.s1", "line.s2"].map((c) => {
		const s = getComputedStyle(document.querySelector("." + c));
		return s.stroke + " " + s.strokeWidth + " " + s.strokeDasharray;
	})`)
	want := []string{"rgb(31, 44, 56) 1.6px none", "rgb(121, 47, 3) 1px 9px, 4px", "rgb(4, 94, 237) 3px none"}
	if !slices.Equal(strokes, want) {
		t.Errorf("tyre and curves are drawn as %q, want %q", strokes, want)
	}
}

// TestCurvesAsCSV saves the curves as a table by the palette of commands.
func TestCurvesAsCSV(t *testing.T) {
	page := openExports(t)
	pressControl(page, "k")
	page.WaitTrue(`document.activeElement?.id === "palette-text"`)
	page.Do(chromedp.KeyEvent("curves csv"), chromedp.KeyEvent("\r"))
	page.WaitTrue(`!!` + caught("text/csv"))
	rows := Eval[[]string](page, caught("text/csv")+`.text().then((t) => t.trim().split("\n"))`)
	if len(rows) < 10 || rows[0][:6] != "travel" {
		t.Errorf("table of %d rows under %q, want one for each travel", len(rows), rows[0])
	}
}
