package browsertest

import (
	"testing"

	"github.com/chromedp/chromedp"
)

// lowerBallY is the field of one coordinate; lowerBall the place of all three.
const (
	lowerBallY = "#point-lowerBallJointleft-y"
	lowerBall  = `[...document.querySelectorAll('[id^="point-lowerBallJointleft-"]')].filter((e) => e.tagName === "INPUT").map((e) => e.value).join(" ")`
)

// openPoints opens the panel of the points.
func openPoints(t *testing.T, o Options) *Page {
	t.Helper()
	page := openSheet(t, o)
	openPanel(page, "car")
	page.WaitTrue(lowerBall + ` === "6.00 695.00 190.00"`)
	return page
}

// TestSlipsStandBesideTheField types what is no number, and what is on the wrong side of
// the car: both are said under the row, and neither blocks anything.
func TestSlipsStandBesideTheField(t *testing.T) {
	page := openPoints(t, Options{Width: 1024, Height: 768})
	typeInto(page, lowerBallY, "abc")
	page.WaitTrue(`!!document.querySelector("` + lowerBallY + `-problem")`)
	below := `(() => {
		const field = document.querySelector("` + lowerBallY + `").getBoundingClientRect();
		const problem = document.querySelector("` + lowerBallY + `-problem").getBoundingClientRect();
		return problem.top >= field.bottom && problem.width > 2 * field.width;
	})()`
	if !Eval[bool](page, below) {
		t.Error("what is wrong does not stand under the row, as wide as it")
	}
	typeInto(page, lowerBallY, "-695")
	page.WaitTrue(`document.querySelector(".findings")?.textContent.includes("other side of the car")`)
	typeInto(page, lowerBallY, "27 23/64 in")
	page.WaitTrue(`document.querySelector("` + lowerBallY + `").value === "694.93" && !document.querySelector(".findings")`)
}

// TestPointIsExplained touches the name of a point on a phone and reads what it is.
func TestPointIsExplained(t *testing.T) {
	page := openPoints(t, Options{Width: 390, Height: 844, Touch: true})
	Eval[chromedp.Void](page, `void document.querySelector("`+lowerBallY+`").scrollIntoView({block: "center"})`)
	click(page, ".point:has("+lowerBallY+") summary")
	inside := `(() => {
		const words = document.querySelector(".point:has(` + lowerBallY + `) .explain > p");
		const box = words.getBoundingClientRect();
		return words.textContent.includes("Centre of the ball") && box.left >= 0 && box.right <= innerWidth && box.height > 0 && box.height < 100;
	})()`
	page.WaitTrue(inside)
	page.Shot("point explained")
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
// its own and takes the left from them.
func TestDatumAndMirror(t *testing.T) {
	page := openPoints(t, Options{})
	typeInto(page, "#datum-z", "10")
	page.WaitTrue(`!document.querySelector("#move-points").disabled`)
	click(page, "#move-points")
	page.WaitTrue(lowerBall + ` === "6.00 695.00 200.00"`)
	click(page, "#side-right")
	click(page, "#own-right")
	typeInto(page, "#point-lowerBallJointright-y", "-700")
	click(page, "#left-from-right")
	click(page, "#side-left")
	page.WaitTrue(lowerBall + ` === "6.00 700.00 200.00"`)
}
