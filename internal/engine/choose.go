package engine

import (
	"cmp"
	"context"
	"maps"

	"toewright/internal/study"
	"toewright/optimize"
	"toewright/solver"
)

// ChooseOptions say how parts are ranked.
type ChooseOptions struct {
	Figure string `json:"figure,omitzero"` // "rms" or "peak"; where empty, what the search minimises
	Side   string `json:"side,omitzero"`   // "left", "right" or, as where empty, "both": the worse of them
	Most   *int   `json:"most,omitzero"`   // combinations listed; nil is [DefaultListed]
	Effect string `json:"effect,omitzero"` // a third aim of the undominated: "parts", fewest parts; none where empty

	Progress func(Progress) `json:"-"`
}

// DefaultListed is how many of the best combinations are listed.
const DefaultListed = 20

// maxListed is the most of them that are listed: more than anyone reads, and kept in
// memory by every worker.
const maxListed = 10_000

// ChooseResult is what [Choose] returns.
type ChooseResult struct {
	Units  study.Units `json:"units"`
	Figure string      `json:"figure"`
	Side   string      `json:"side"`
	Window Window      `json:"window"`
	Tried  int         `json:"tried"` // combinations
	Built  int         `json:"built"` // those that go together and reach the window, whatever the limits
	// Best are those of least toe change that hold all limits, best first; Undominated
	// those of which no other is better in toe change, price and effect at once, cheapest
	// first.
	Best        []Choice `json:"best"`
	Undominated []Choice `json:"undominated"`
	// Stopped says that the call was cancelled before all combinations were tried.
	Stopped bool `json:"stopped,omitzero"`
	// Conflict says, where no combination holds all limits, which of them how many
	// break; none otherwise.
	Conflict []BrokenLimit `json:"conflict,omitzero"`
}

// Choice is one combination of the catalogue's parts.
type Choice struct {
	Parts   []ChosenPart  `json:"parts"` // none for a slot that stays as it is
	Price   float64       `json:"price"`
	Changes study.Changes `json:"changes"` // as those of a candidate
	ToeFigures
	Limits []LimitResult `json:"limits,omitzero"` // how the car stands to each, in the set-up of least room
	Loads  []LoadPeak    `json:"loads,omitzero"`  // the largest of the study's load cases, as the car stands
}

// BrokenLimit says how many combinations break a limit.
type BrokenLimit struct {
	Name  string `json:"name"`
	Share Number `json:"share"` // of combinations tried for it
}

// ChosenPart is a part by its slot and name.
type ChosenPart struct {
	Slot string `json:"slot"`
	Name string `json:"name"`
}

// Choose tries every combination of the study's catalogue, each slot with one of
// its parts or as it stands. A call that is cancelled returns the best so far.
func Choose(ctx context.Context, d *study.Document, o ChooseOptions) (*ChooseResult, error) {
	r, err := NewChooseRun(d, o)
	if err != nil {
		return nil, err
	}
	found, err := r.Try(ctx, Whole)
	if err != nil {
		return nil, err
	}
	return r.Result(ctx, found)
}

// chooser turns a study's catalogue into a shelf of package optimize.
type chooser struct {
	*sweeper
	shelf optimize.Shelf
	ups   []setUp         // in which limits are held
	parts [][]*study.Part // by slot
}

func newChooser(d *study.Document, o *ChooseOptions) (*chooser, error) {
	if len(d.Catalogue) == 0 {
		return nil, wrongf("catalogue", "is empty: list parts with their slot, name and changes")
	}
	sweep, base, err := newJudged(d, study.BaseName)
	if err != nil {
		return nil, err
	}
	minimise := ""
	if d.Search != nil {
		minimise = d.Search.Minimise
	}
	c := &chooser{sweeper: sweep}
	judge, err := c.judging(base, o.Side)
	if err != nil {
		return nil, err
	}
	c.shelf = optimize.Shelf{Judge: judge, Measure: measureOf(cmp.Or(o.Figure, minimise))}
	if c.shelf.Most, err = counted("most", o.Most, DefaultListed, 1, maxListed); err != nil {
		return nil, err
	}
	if o.Effect == "parts" {
		c.shelf.Effects = []optimize.Effect{{Name: "changes", Of: func(x *solver.Axle) float64 { return float64(len(x.Changes())) }}}
	}
	if c.shelf.Limits, err = c.limits(); err != nil {
		return nil, err
	}
	if c.ups, err = c.scenarios(); err != nil {
		return nil, err
	}
	for _, up := range c.ups {
		if !up.holds {
			up.Hold = c.shelf.Hold
		}
		c.shelf.SetUps = append(c.shelf.SetUps, up.Scenario)
	}
	for i := range d.Catalogue {
		if err := c.add(&d.Catalogue[i]); err != nil {
			return nil, err
		}
	}
	return c, c.together()
}

// add enters a part in its slot.
func (c *chooser) add(p *study.Part) error {
	changes, err := c.doc.SolverChanges(c.design, p.Changes)
	if err != nil {
		return explain(err, "part "+p.Name)
	}
	at := 0
	for at < len(c.parts) && c.parts[at][0].Slot != p.Slot {
		at++
	}
	if at == len(c.parts) {
		c.parts = append(c.parts, nil)
		c.shelf.Slots = append(c.shelf.Slots, optimize.Slot{Name: p.Slot})
	}
	c.parts[at] = append(c.parts[at], p)
	s := &c.shelf.Slots[at]
	s.Parts = append(s.Parts, optimize.Part{Name: p.Name, Price: p.Price, Changes: changes, Excludes: p.Excludes})
	return nil
}

// Result says what was found, or where nothing was tried the context's error.
func (r *ChooseRun) Result(ctx context.Context, found *optimize.Choices) (*ChooseResult, error) {
	if found.Tried == 0 {
		return nil, ctx.Err()
	}
	w := r.window
	out := &ChooseResult{
		Units: r.doc.Units, Figure: r.shelf.Measure.String(), Side: sideNames[r.shelf.Sides],
		Window: Window{w.Bump, w.Droop, w.Step}, Tried: found.Tried, Built: found.Built,
		Best: []Choice{}, Undominated: []Choice{}, Stopped: ctx.Err() != nil,
	}
	for _, k := range found.Best {
		out.Best = append(out.Best, r.choice(&k))
	}
	for _, k := range found.Front {
		out.Undominated = append(out.Undominated, r.choice(&k))
	}
	if len(found.Best) == 0 {
		out.Conflict = r.conflict(ctx)
	}
	return out, nil
}

func (c *chooser) choice(k *optimize.Choice) Choice {
	out := Choice{Parts: []ChosenPart{}, Price: k.Price, Changes: study.Changes{}, ToeFigures: toeFigures(k.Figures)}
	for slot, i := range c.shelf.Parts(k.Number) {
		if i < 0 {
			continue
		}
		p := c.parts[slot][i]
		out.Parts = append(out.Parts, ChosenPart{p.Slot, p.Name})
		c.combine(out.Changes, p.Changes)
	}
	out.Limits = c.standing(out.Changes)
	out.Loads = c.peaks(out.Changes, c.shelf.Hold)
	return out
}

// combine adds the changes of a part to those of others: settings replace one
// another, changes add up.
func (c *chooser) combine(sum, more study.Changes) {
	for key, v := range maps.All(more) {
		if p, _, err := solver.FindParameter(c.design, key); err == nil && p.Absolute {
			sum[key] = v
			continue
		}
		sum[key] += v
	}
}
