package engine

import (
	"context"
	"math"

	"toewright/optimize"
	"toewright/solver"
)

// AllScenarios asks for a map over all set-ups of the study's search together.
const AllScenarios = "all"

// setScenario lays the map on the car in a set-up of the study's search, or in all
// of them; none, where name is empty, is the car as it stands.
func (m *mapper) setScenario(name string) error {
	m.layers = []mapLayer{{m.problem, 1}}
	if name == "" {
		return nil
	}
	list, err := m.scenarios()
	if err != nil {
		return err
	}
	m.layers = nil
	for i := range list {
		if name == AllScenarios || name == list[i].Name {
			m.layers = append(m.layers, m.layer(&list[i]))
		}
	}
	if m.layers == nil {
		return wrongf("scenario", "the study's search has no set-up called %.60q; %s is all of them", name, AllScenarios)
	}
	m.across = optimize.Mean
	if m.doc.Search.Combine == "worst" {
		m.across = optimize.Worst
	}
	return nil
}

// mapLayer is the map in one set-up.
type mapLayer struct {
	optimize.ParameterMap
	weight float64
}

// layer returns the map in a set-up, which has the last word on what both set.
func (m *mapper) layer(up *setUp) mapLayer {
	p := m.problem
	p.Changes = append(append([]solver.Change(nil), p.Changes...), up.Changes...)
	p.From = up.From
	if up.holds {
		p.Hold = up.Hold
	}
	return mapLayer{p, up.Weight}
}

// fill returns the figure of each cell of some rows over all layers, radians; none
// where one of them has none.
func (m *mapper) fill(ctx context.Context, rows optimize.Span, progress stage) ([]Number, error) {
	cells := make([]Number, rows.Len()*m.problem.Columns)
	total := 0.0
	for i := range m.layers {
		n := float64(len(m.layers))
		part := progress.within(float64(i)/n, float64(i+1)/n)
		found, err := m.layers[i].Fill(ctx, rows, optimize.Parallel{Progress: part.items(rows.Len())})
		if err != nil {
			return nil, explain(err, "")
		}
		for k, f := range found {
			cells[k] = m.join(cells[k], Number(f.Of(m.measure)), m.layers[i].weight)
		}
		total += m.layers[i].weight
	}
	if len(m.layers) > 1 && m.across == optimize.Mean {
		for k := range cells {
			cells[k] = m.mean(cells[k], total)
		}
	}
	return cells, nil
}

// join adds a layer's figure to those before as the search combines them: the
// largest, or a weighted sum, of squares where the figure is a root mean square.
func (m *mapper) join(sum, figure Number, weight float64) Number {
	switch {
	case len(m.layers) == 1:
		return figure
	case m.across == optimize.Worst:
		return Number(math.Max(float64(sum), float64(figure)))
	case m.measure == optimize.RMS:
		return sum + Number(weight)*figure*figure
	}
	return sum + Number(weight)*figure
}

// mean undoes what join made of the sum of all layers.
func (m *mapper) mean(sum Number, weight float64) Number {
	x := float64(sum) / weight
	if m.measure == optimize.RMS {
		x = math.Sqrt(x)
	}
	return Number(x)
}
