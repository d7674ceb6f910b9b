package ui

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/number"
	"toewright/internal/study"
)

// pointing is whose points are shown and where the keyboard is among them. It outlives the
// panel.
type pointing struct {
	grid  model.Grid
	right bool // the right side's, where it has its own
}

// side returns the side whose points are shown.
func (p *pointing) side(d *study.Document) study.Side {
	if p.right && d.Suspension.Right != nil {
		return study.Right
	}
	return study.Left
}

// walks reports whether an event comes from a cell whose text is not being typed.
func (p *pointing) walks(e app.Value) bool {
	return strings.HasPrefix(cellOf(e), cellPrefix) && p.grid.Mode == model.Walking
}

// pointGrid is the table of the hardpoints, one place of the keyboard: arrows, Enter and Tab
// go about it, what is typed replaces a number, F2 goes into it, Escape gives it back, and a
// block of a spreadsheet is pasted from the picked cell on.
type pointGrid struct {
	app.Compo
	Bench bench
	State *pointing
	Draw  func() // has the drawing follow the cell that is picked

	fresh  bool   // the press that is under way brought the keyboard to its cell
	undoes bool   // the keyboard went to the way back from what was said, which goes with it
	pasted string // why a block was refused
	deaf   []func()
}

// cellPrefix begins the ids of cells.
const cellPrefix = "point-"

// cellOf is the id of what an event comes from.
func cellOf(e app.Value) string { return e.Get("target").Get("id").String() }

// OnMount listens to the keys that are the grid's: only at once can a browser be kept from
// doing something with them too.
func (g *pointGrid) OnMount(ctx app.Context) {
	g.deaf = []func(){
		listen("keydown", func(e app.Value) { g.key(ctx, e) }),
		listen("paste", func(e app.Value) { g.block(ctx, e) }),
	}
}

// OnDismount lets go of them, and of the point in the drawing.
func (g *pointGrid) OnDismount() {
	for _, let := range g.deaf {
		let()
	}
	v := &g.Bench.Desk.View
	v.Picked = ""
	v.PointOut("", 0)
	g.Draw()
}

// OnUpdate has the text of the picked cell chosen again, which is lost with an undo, and gives
// the cell the keyboard back that was lost with its button.
func (g *pointGrid) OnUpdate(ctx app.Context) {
	ctx.Defer(func(app.Context) {
		if g.undoes && app.Window().Get("document").Get("activeElement").Get("tagName").String() == "BODY" {
			focus(g.picked())
		}
		g.choose()
	})
}

// rows are the points that are shown.
func (g *pointGrid) rows() []model.PointRow {
	return model.PointRows(g.Bench.document(), g.State.side(g.Bench.document()))
}

// at returns the cell of an id.
func (g *pointGrid) at(id string) (row, axis int, ok bool) {
	rows := g.rows()
	for row := range rows {
		for axis := range model.GridColumns {
			if rows[row].CellID(axis) == id {
				return row, axis, true
			}
		}
	}
	return 0, 0, false
}

// picked returns the id of the cell that is picked.
func (g *pointGrid) picked() string {
	rows := g.rows()
	g.State.grid.Clamp(len(rows))
	return rows[g.State.grid.Row].CellID(g.State.grid.Column)
}

// cells are what the keyboard goes about.
func (g *pointGrid) cells(ctx app.Context) *model.Cells {
	rows := g.rows()
	return &model.Cells{
		Rows:  len(rows),
		Shown: func(row, axis int) string { return model.PointText(g.Bench.document(), &rows[row], axis) },
		Take: func(row, axis int, text string) error {
			p := &rows[row]
			was := model.PointText(g.Bench.document(), p, axis)
			if err := g.Bench.session().TypePoint(*p, axis, text); err != nil {
				return err
			}
			is := model.PointText(g.Bench.document(), &g.rows()[row], axis)
			g.Bench.Changed(ctx)
			g.Bench.Say(ctx, upperFirst(p.Label)+", "+"xyz"[axis:axis+1]+": "+was+" → "+is+".", g.Bench.Undo)
			return nil
		},
	}
}

// key does what a key means that is the grid's. It runs outside the page's goroutine.
func (g *pointGrid) key(ctx app.Context, e app.Value) {
	if !strings.HasPrefix(cellOf(e), cellPrefix) || e.Get("isComposing").Bool() {
		return
	}
	key := stroke(e)
	if key == "enter" && app.Window().Call("matchMedia", "(pointer: coarse)").Get("matches").Bool() {
		key = "tab" // a phone's keys have no other that goes across
	}
	g.fresh = false
	if !g.State.grid.Owns(key, len(g.rows())) {
		return
	}
	e.Call("preventDefault")
	ctx.Dispatch(func(ctx app.Context) {
		g.move(func() { g.State.grid.Press(key, g.cells(ctx)) })
		g.lead()
		if cell := app.Window().GetElementByID(g.picked()); key == "f2" && cell.Truthy() {
			end := len([]rune(cell.Get("value").String()))
			cell.Call("setSelectionRange", end, end)
		}
	})
}

// move does something by which another cell may be picked, or what is typed taken or given
// back.
func (g *pointGrid) move(do func()) {
	left := g.picked()
	do()
	if g.State.grid.Mode == model.Walking {
		halfTyped.drop(left)
		// What stands there is not always what was rendered last. The cells of a study that was
		// just opened are not on the page yet.
		row, axis, ok := g.at(left)
		if cell := app.Window().GetElementByID(left); ok && cell.Truthy() {
			cell.Set("value", model.PointText(g.Bench.document(), &g.rows()[row], axis))
		}
	}
	g.pasted = ""
	g.point()
}

// point has the drawing ring the point whose cell is picked.
func (g *pointGrid) point() {
	v, p := &g.Bench.Desk.View, g.rows()[g.State.grid.Row]
	v.Picked, v.PickedSide = p.Name, p.Side.Solver()
	if v.PointOut("", 0) {
		g.Draw()
	}
}

// lead gives the keyboard to the picked cell.
func (g *pointGrid) lead() {
	focus(g.picked())
	g.choose()
}

// choose has what is typed next replace the text of the picked cell, if that has the keyboard.
func (g *pointGrid) choose() {
	if cell := app.Window().GetElementByID(g.picked()); g.State.grid.Mode == model.Walking && cell.Truthy() && cell.Call("matches", ":focus").Bool() {
		cell.Call("select")
	}
}

// come picks the cell that the keyboard came to.
func (g *pointGrid) come(ctx app.Context, e app.Event) {
	id := cellOf(e)
	row, axis, ok := g.at(id)
	if !ok {
		return
	}
	g.fresh = true
	g.move(func() { g.State.grid.Pick(row, axis, g.cells(ctx)) })
	if id != g.picked() {
		focus(g.picked()) // where what is typed was refused
	}
	g.choose()
}

// leave has what is typed taken once the keyboard is outside the grid.
func (g *pointGrid) leave(ctx app.Context, e app.Event) {
	id := ""
	if to := e.Get("relatedTarget"); to.Truthy() {
		id = to.Get("id").String()
	}
	g.undoes = id == "message-undo"
	if !strings.HasPrefix(id, cellPrefix) && app.Window().Get("document").Call("hasFocus").Bool() {
		g.move(func() { g.State.grid.Settle(g.cells(ctx)) })
	}
}

// press chooses the text of a cell that was just picked, and goes into that of one that was
// picked before.
func (g *pointGrid) press(ctx app.Context, e app.Event) {
	if cellOf(e) != g.picked() {
		return
	}
	if !g.fresh && g.State.grid.Mode == model.Walking {
		g.State.grid.Edit(g.cells(ctx))
	}
	g.fresh = false
	g.choose()
}

// typed keeps what is being typed.
func (g *pointGrid) typed(_ app.Context, e app.Event) {
	text := e.Get("target").Get("value").String()
	g.State.grid.Type(text)
	halfTyped.set(cellOf(e), text, "")
}

// block puts a block of cells that is pasted. It runs outside the page's goroutine.
func (g *pointGrid) block(ctx app.Context, e app.Value) {
	if !strings.HasPrefix(cellOf(e), cellPrefix) {
		return
	}
	text := e.Get("clipboardData").Call("getData", "text/plain").String()
	if !model.IsBlock(text) {
		return
	}
	e.Call("preventDefault")
	ctx.Dispatch(func(ctx app.Context) {
		at := g.State.grid
		g.move(func() { g.State.grid = model.Grid{Row: at.Row, Column: at.Column} })
		count, err := g.Bench.session().PastePoints(g.rows(), at.Row, at.Column, text)
		if err != nil {
			g.pasted = plain(err)
			return
		}
		g.Bench.Changed(ctx)
		g.Bench.Say(ctx, "Pasted: "+number.Count(count, "coordinate")+".", g.Bench.Undo)
	})
}

// resume goes on with what was being typed when the page was left.
func (g *pointGrid) resume() {
	if g.State.grid.Mode != model.Walking {
		return
	}
	for id, text := range halfTyped.texts {
		if strings.HasPrefix(id, cellPrefix) {
			g.State.right = g.State.right || strings.Contains(id, string(study.Right)+"-")
			if row, axis, ok := g.at(id); ok {
				g.State.grid.Row, g.State.grid.Column = row, axis
				g.State.grid.Type(text)
			}
		}
	}
}
