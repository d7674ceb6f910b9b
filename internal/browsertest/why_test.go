package browsertest

import (
	"fmt"
	"strings"
	"testing"
)

// tryIt is the button of the first cause.
const tryIt = `#why .why-cause button`

// TestWhyTryIt reads under the drawing why the base car's toe changes, before which step it
// stands, and makes a candidate of the first move without leaving the step.
func TestWhyTryIt(t *testing.T) {
	for _, o := range []Options{{}, {Width: 1024, Height: 768, Dark: true}, {Width: 390, Height: 844, Touch: true}, {Width: 360, Height: 640, Touch: true, Dark: true}} {
		t.Run(fmt.Sprintf("%d", o.Width), func(t *testing.T) {
			page := openSheet(t, o)
			openPanel(page, "car")
			page.WaitTrue(`document.querySelector("` + tryIt + `") !== null`)
			page.Shot(fmt.Sprintf("why %d", o.Width))
			text := strings.ToLower(Eval[string](page, `document.querySelector("#why").innerText`))
			if !strings.Contains(text, "curvature") && !strings.Contains(text, "slope") {
				t.Errorf("under the drawing stands %q, want a cause", text)
			}
			if side := Eval[float64](page, `document.documentElement.scrollWidth - innerWidth`); side > 0 {
				t.Errorf("the page is %g px too wide", side)
			}
			cars := Eval[int](page, `document.querySelectorAll(".strip .key").length`)
			click(page, tryIt)
			page.WaitTrue(fmt.Sprintf(`document.querySelectorAll(".strip .key").length === %d`, cars+1))
			page.WaitTrue(fmt.Sprintf(`document.querySelector("#picture.foremost%d") !== null`, cars))
			if open := attribute(t, page, "#step-car", "aria-selected"); open != "true" {
				t.Error("the step was left")
			}
			page.WaitTrue(`!document.querySelector("#why.stale")`)
			page.Shot(fmt.Sprintf("why tried %d", o.Width))
			openPanel(page, "make")
			page.WaitTrue(`!document.querySelector("#why").checkVisibility()`)
		})
	}
}
