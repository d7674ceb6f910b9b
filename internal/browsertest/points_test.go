package browsertest

import (
	"fmt"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"toewright/app/model"
	"toewright/internal/study"
)

// lowerBallY is the cell of one coordinate; lowerBall the place of all three.
const (
	lowerBallY = "#point-lowerBallJointleft-y"
	lowerBall  = `["x", "y", "z"].map((axis) => document.querySelector("#point-lowerBallJointleft-" + axis)?.value).join(" ")`
)

// atCell is the cell that has the keyboard, chosenText what of its text is chosen.
const (
	atCell     = `document.activeElement.id.replace("point-", "")`
	chosenText = `(() => { const e = document.activeElement; return e.value.slice(e.selectionStart, e.selectionEnd); })()`
)

// keys sends keys to whatever has the keyboard.
func keys(p *Page, text string) {
	p.t.Helper()
	p.Do(chromedp.KeyEvent(text))
}

// typeCell types over a cell of the points, and takes it.
func typeCell(p *Page, selector, text string) {
	p.t.Helper()
	p.WaitTrue(`!!document.querySelector(` + quote(selector) + `)`)
	Eval[chromedp.Void](p, `void document.querySelector(`+quote(selector)+`).focus()`)
	keys(p, text)
	keys(p, kb.Enter)
}

// pasteText pastes a text into whatever has the keyboard.
func pasteText(p *Page, text string) {
	p.t.Helper()
	Eval[chromedp.Void](p, `(() => {
		const data = new DataTransfer();
		data.setData("text/plain", `+quote(text)+`);
		document.activeElement.dispatchEvent(new ClipboardEvent("paste", {clipboardData: data, bubbles: true, cancelable: true}));
	})()`)
}

// openPoints opens the panel of the points.
func openPoints(t *testing.T, o Options) *Page {
	t.Helper()
	page := openSheet(t, o)
	openPanel(page, "car")
	page.WaitTrue(lowerBall + ` === "6.00 695.00 190.00"`)
	return page
}

// TestCarByKeyboard makes a car of one's own without a mouse: a template, then every point
// by its cell, a block of a spreadsheet, what was mistyped, what was undone and what was half
// typed when the page was loaded anew.
func TestCarByKeyboard(t *testing.T) {
	page := Open(t, Options{})
	page.WaitOfflineReady()
	openPanel(page, "car")
	page.WaitTrue(`!!document.querySelector("#to-templates")`)
	Eval[chromedp.Void](page, `void document.querySelector("#to-templates").focus()`)
	keys(page, kb.Enter)
	page.WaitTrue(`document.activeElement.id === "new-study" && document.querySelectorAll(".sketch .tyre").length === 26`)
	page.Shot("templates")
	for range 2 {
		keys(page, kb.Tab)
	}
	keys(page, kb.Enter) // the second template: double wishbone, rack behind the axle
	page.WaitTrue(says("#borrowed", "Invented example"))
	at := func(want string) {
		t.Helper()
		page.WaitTrue(atCell + ` === ` + quote(want))
	}
	value := func(cell string) string { return `document.querySelector("#point-` + cell + `").value` }

	// Across by Tab, and to the next row. Each cell says its side to those who hear the page.
	at("lowerFrontPivotleft-x")
	if got := Eval[string](page, `document.activeElement.getAttribute("aria-label")`); !strings.HasSuffix(got, ", left, x") {
		t.Errorf("the first cell is called %q, want its side and axis at the end", got)
	}
	for _, text := range []string{"150", "350.5", "8 1/4 in"} {
		keys(page, text)
		keys(page, kb.Tab)
	}
	at("lowerRearPivotleft-x")
	page.WaitTrue(value("lowerFrontPivotleft-x") + ` === "150.00" && ` + value("lowerFrontPivotleft-z") + ` === "209.55"`)

	// Down by Enter: sums and fractions. Arrows walk, and take what was typed.
	for _, text := range []string{"-160", "5 + 1/2", "+100"} {
		keys(page, text)
		keys(page, kb.Enter)
	}
	at("upperRearPivotleft-x")
	page.WaitTrue(value("lowerBallJointleft-x") + ` === "5.50"`)
	for _, step := range []struct{ key, want string }{
		{kb.ArrowRight, "upperRearPivotleft-y"}, {kb.ArrowUp, "upperFrontPivotleft-y"}, {kb.ArrowLeft, "upperFrontPivotleft-x"}, {kb.ArrowDown, "upperRearPivotleft-x"},
	} {
		keys(page, step.key)
		at(step.want)
	}
	keys(page, "-120")
	keys(page, kb.ArrowRight)
	at("upperRearPivotleft-y")
	page.WaitTrue(value("upperRearPivotleft-x") + ` === "−120.00"`)

	// F2 goes into the number, where arrows are the text's own; Escape gives it back.
	keys(page, kb.F2)
	keys(page, kb.ArrowLeft+kb.ArrowLeft+kb.ArrowLeft+kb.ArrowLeft)
	at("upperRearPivotleft-y")
	keys(page, "5")
	page.WaitTrue(value("upperRearPivotleft-y") + ` === "4354.00"`)
	keys(page, kb.Escape)
	page.WaitTrue(value("upperRearPivotleft-y") + ` === "434.00" && ` + chosenText + ` === "434.00"`)

	// What is no number stays, with the reason under it, until it is one.
	keys(page, "abc")
	keys(page, kb.Enter)
	at("upperRearPivotleft-y")
	page.WaitTrue(says("#point-upperRearPivotleft-y-problem", "is not a length"))
	keys(page, kb.Escape)
	keys(page, "435")
	keys(page, kb.Enter)
	at("upperBallJointleft-y")
	page.WaitTrue(`!document.querySelector(".fault") && ` + value("upperRearPivotleft-y") + ` === "435.00"`)

	// A block: refused as a whole with line and column, then taken, and undone with the
	// keyboard where it was.
	keys(page, kb.ArrowLeft)
	at("upperBallJointleft-x")
	pasteText(page, "-15\t651\t463\r\n-131\tup\t239\r\n")
	page.WaitTrue(says("#point-upperBallJointleft-x-problem", "Nothing was pasted: line 2, column 2"))
	page.WaitTrue(value("upperBallJointleft-x") + ` === "−16.00"`)
	pasteText(page, "-15\t651\t463\r\n-131\t685\t239\r\n-145\t\t235\r\n")
	page.WaitTrue(`!document.querySelector(".fault") && ` + value("tieRodInnerleft-z") + ` === "235.00" && ` + value("tieRodInnerleft-y") + ` === "374.00"`)
	page.Do(chromedp.KeyEvent("z", chromedp.KeyModifiers(2)))
	page.WaitTrue(value("tieRodInnerleft-z") + ` === "236.00"`)
	at("upperBallJointleft-x")
	page.WaitTrue(chosenText + ` === "−16.00"`)
	page.Do(chromedp.KeyEvent("y", chromedp.KeyModifiers(2)))
	page.WaitTrue(value("tieRodInnerleft-z") + ` === "235.00"`)

	// What is half typed is there after the page was loaded anew.
	keys(page, kb.ArrowDown+kb.ArrowDown+kb.ArrowDown)
	at("wheelCentreleft-x")
	keys(page, "1.2")
	time.Sleep(lostWithin)
	page.Reload()
	openPanel(page, "car")
	page.WaitTrue(`document.querySelector("#point-wheelCentreleft-x")?.value === "1.2"`)
	Eval[chromedp.Void](page, `void document.querySelector("#point-wheelCentreleft-x").focus()`)
	keys(page, "5")
	keys(page, kb.Tab)
	at("wheelCentreleft-y")
	page.WaitTrue(value("wheelCentreleft-x") + `.startsWith("1.") && document.querySelector("#point-wheelCentreleft-x").closest("tr").textContent.includes("template y, z")`)

	// Out of the grid at its end.
	keys(page, kb.Tab)
	keys(page, kb.Tab)
	page.WaitTrue(`!document.activeElement.id.startsWith("point-")`)
	page.Shot("car by keyboard")
}

// TestPressesPickCells presses on a cell: the first picks it, and what is typed replaces its
// number; the second goes into it. What was typed in another one is taken.
func TestPressesPickCells(t *testing.T) {
	page := openPoints(t, Options{})
	press := func(selector string) {
		at := middle(page, selector)
		page.Do(chromedp.MouseClickXY(at.X, at.Y))
	}
	typeCell(page, "#point-lowerFrontPivotleft-x", "155") // the warning about the template's numbers is another from now on
	page.WaitTrue(says("#borrowed", "numbers that the toe curve depends on"))
	press(lowerBallY)
	page.WaitTrue(chosenText + ` === "695.00"`)
	page.WaitTrue(`!!document.querySelector(".drawing .pointed")?.getAttribute("d")`)
	keys(page, "700")
	press("#point-lowerBallJointleft-z")
	page.WaitTrue(lowerBall + ` === "6.00 700.00 190.00" && ` + chosenText + ` === "190.00"`)
	press("#point-lowerBallJointleft-z")
	page.WaitTrue(chosenText + ` === ""`)
	keys(page, kb.Escape)
	page.WaitTrue(says("#message", "Lower ball joint, y: 695.00 → 700.00."))
	click(page, "#message-undo")
	page.WaitTrue(lowerBall + ` === "6.00 695.00 190.00"`)
}

// TestSlipsStandBesideTheField types what is no number, and what is on the wrong side of
// the car: both are said, and neither blocks anything. The doubt leads to its cell.
func TestSlipsStandBesideTheField(t *testing.T) {
	page := openPoints(t, Options{Width: 1024, Height: 768})
	typeCell(page, lowerBallY, "abc")
	page.WaitTrue(`!!document.querySelector("` + lowerBallY + `-problem")`)
	below := `(() => {
		const field = document.querySelector("` + lowerBallY + `").getBoundingClientRect();
		const problem = document.querySelector("` + lowerBallY + `-problem").getBoundingClientRect();
		return problem.top >= field.bottom && problem.width > 2 * field.width;
	})()`
	if !Eval[bool](page, below) {
		t.Error("what is wrong does not stand under the row, as wide as it")
	}
	keys(page, kb.Escape)
	typeCell(page, lowerBallY, "-695")
	page.WaitTrue(says("#doubts", "other side of the car"))
	Eval[chromedp.Void](page, `void document.querySelector("#doubts .link").focus()`)
	keys(page, kb.Enter)
	page.WaitTrue(atCell + ` === "lowerBallJointleft-y" && ` + chosenText + ` === "−695.00"`)
	typeCell(page, lowerBallY, "27 23/64 in")
	page.WaitTrue(`document.querySelector("` + lowerBallY + `").value === "694.93" && !document.querySelector("#doubts")`)
}

// TestPointsByThumb touches a cell on a phone: the point is explained, rows are as high as a
// thumb, and the phone's Enter goes across.
func TestPointsByThumb(t *testing.T) {
	for _, o := range []Options{{Width: 390, Height: 844, Touch: true}, {Width: 360, Height: 640, Touch: true}} {
		page := openPoints(t, o)
		Eval[chromedp.Void](page, `void document.querySelector("`+lowerBallY+`").focus()`)
		page.WaitTrue(says("#about-point", "Centre of the ball"))
		low := Eval[[]string](page, `[...document.querySelectorAll(".cells input")].filter((e) => {
			const r = e.getBoundingClientRect();
			return r.height < 44 || r.left < 0 || r.right > innerWidth;
		}).map((e) => e.id)`)
		if len(low) > 0 {
			t.Errorf("%d px: %s are no place for a thumb", o.Width, strings.Join(low, ", "))
		}
		keys(page, "696")
		keys(page, kb.Enter)
		page.WaitTrue(atCell + ` === "lowerBallJointleft-z" && ` + lowerBall + ` === "6.00 696.00 190.00"`)
		page.Shot(fmt.Sprintf("points by thumb %d", o.Width))
	}
}

// TestPointsFromADroppedTable drops a file whose columns stand in another order, under a
// header in inches.
func TestPointsFromADroppedTable(t *testing.T) {
	page := openPoints(t, Options{})
	Eval[chromedp.Void](page, `void (() => {
		const data = new DataTransfer();
		data.items.add(new File(["z (in);point;x (in);y (in)\n7.5;lowerBallJoint;0.25;27.5\n"], "points.csv", {type: "text/csv"}));
		document.querySelector("#points-text").dispatchEvent(new DragEvent("drop", {bubbles: true, cancelable: true, dataTransfer: data}));
	})()`)
	page.WaitTrue(lowerBall + ` === "6.35 698.50 190.50"`)
	click(page, "#message-undo")
	page.WaitTrue(lowerBall + ` === "6.00 695.00 190.00"`)
}

// TestDatumAndMirror moves all points onto another zero, gives the right side points of
// its own, takes the left from them and mirrors them again.
func TestDatumAndMirror(t *testing.T) {
	page := openPoints(t, Options{})
	typeInto(page, "#datum-z", "10")
	page.WaitTrue(`!document.querySelector("#move-points").disabled`)
	click(page, "#move-points")
	page.WaitTrue(lowerBall + ` === "6.00 695.00 200.00"`)
	click(page, "#side-right")
	typeCell(page, "#point-lowerBallJointright-y", "-700")
	page.WaitTrue(`document.querySelector("#point-lowerBallJointright-y").value === "−700.00"`)
	click(page, "#left-from-right")
	click(page, "#side-left")
	page.WaitTrue(lowerBall + ` === "6.00 700.00 200.00"`)
	click(page, "#side-both")
	page.WaitTrue(`document.querySelector("#side-both").getAttribute("aria-pressed") === "true" && !document.querySelector("#left-from-right")`)
}

// TestEveryKeyOfTheCarIsShown opens a study with all that a file can state: each value of the
// car has its field or its cell there, and what has none is said to be kept.
func TestEveryKeyOfTheCarIsShown(t *testing.T) {
	const file = "../../testdata/kept/studies/everything.json"
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	d, err := study.Decode(text)
	if err != nil {
		t.Fatal(err)
	}
	page := openSheet(t, Options{})
	page.openFile(d)
	openPanel(page, "car")
	page.WaitTrue(says("#study-menu", d.Name))
	ids := []string{"wheelbase", "tyre-radius", "axle", "adjuster", "static-toe-left", "static-camber-left", "travel-bump", "travel-droop", "travel-step", "study-notes"}
	for _, v := range model.CarValues(d) {
		ids = append(ids, v.ID)
	}
	for _, v := range model.TieRodValues {
		ids = append(ids, "tie-rod-"+v.Key)
	}
	shown := func(ids []string) {
		t.Helper()
		for _, id := range ids {
			if !Evalf[bool](page, `!!document.getElementById(%q)?.checkVisibility()`, id) {
				t.Errorf("%s is not on the page", id)
			}
		}
	}
	cells := func(side study.Side) (ids []string) {
		for _, p := range model.PointRows(d, side) {
			ids = append(ids, p.CellID(0), p.CellID(1), p.CellID(2))
		}
		return ids
	}
	left := cells(study.Left)
	page.WaitTrue(`!!document.getElementById(` + quote(left[len(left)-1]) + `)`)
	shown(append(ids, left...))
	if right := cells(study.Right); d.Suspension.Right != nil {
		click(page, "#side-right")
		page.WaitTrue(`!!document.getElementById(` + quote(right[0]) + `)`)
		shown(right)
	}
	names := model.KeptUntouched(d)
	if len(names) < 5 {
		t.Errorf("kept untouched: %q", names)
	}
	for _, name := range names {
		if !Eval[bool](page, says("#untouched", name)) {
			t.Errorf("nothing says that %s is kept", name)
		}
	}
}

// TestHowWellPointsAreKnown keeps a template's point as the car's own, types how well it is known,
// and goes back to what is usual.
func TestHowWellPointsAreKnown(t *testing.T) {
	page := Open(t, Options{})
	openPanel(page, "points")
	const about, field = `document.querySelector("#about-point").textContent`, "#known-point-lowerBallJointleft-x"
	Eval[chromedp.Void](page, `void document.querySelector("#point-lowerBallJointleft-x").focus()`)
	page.WaitTrue(about + `.startsWith("Lower ball joint")`)
	click(page, "#about-point .keep")
	page.WaitTrue(`document.querySelector(` + quote(field) + `)?.value === "2.5"`)
	typeInto(page, field, "-1")
	page.WaitTrue(`document.querySelector("#about-point .problem")?.textContent.includes("standard deviation")`)
	typeInto(page, field, "0.75")
	page.WaitTrue(about + `.includes("± 0.75 mm") && !document.querySelector("#about-point .problem")`)
	page.Shot("known to")
	click(page, "#usual-sds")
	page.WaitTrue(about + `.includes("± 2.5 mm") && !document.querySelector("#usual-sds")`)
}
