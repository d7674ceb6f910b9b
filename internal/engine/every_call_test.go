package engine

import (
	"context"
	"testing"

	"toewright/internal/study"
)

// asked returns a question whose answer must not fail.
func asked[O, R any](call func(context.Context, *study.Document, O) (R, error), o O) func(*study.Document) error {
	return func(d *study.Document) error {
		_, err := call(context.Background(), d, o)
		return err
	}
}

// TestEveryCallOfEveryTemplate asks each call about every kind of suspension with every
// gear: a new kind is answered by all of them.
func TestEveryCallOfEveryTemplate(t *testing.T) {
	few, cells, designs := 60, 4, 2
	calls := map[string]func(*study.Document) error{
		"sweep": asked(Sweep, SweepOptions{}), "compare": asked(Compare, CompareOptions{}), "diagnose": asked(Diagnose, DiagnoseOptions{}),
		"axle": asked(Axle, AxleOptions{}), "loads": asked(Loads, LoadsOptions{}), "search": asked(Search, SearchOptions{}),
		"tradeoff": asked(TradeOff, TradeOffOptions{Designs: &designs}), "fit": asked(Fit, FitOptions{}),
		"series": asked(Series, SeriesOptions{}), "tolerance": asked(Tolerance, ToleranceOptions{Cars: &few}), "choose": asked(Choose, ChooseOptions{}),
		"map": asked(Map, MapOptions{Columns: &cells, Rows: &cells}), "arm": asked(Arm, ArmOptions{}),
	}
	for _, template := range study.Templates() {
		d := loaded(t, template)
		d.Series = []study.MeasuredCar{{Car: "1", Readings: d.Readings}}
		for name, ask := range calls {
			if (name == "fit" || name == "series") && len(d.Readings) == 0 {
				continue
			}
			if err := ask(d); err != nil {
				t.Errorf("%s of %s: %v", name, template.Key, err)
			}
		}
		if d.Steering != nil && d.Steering.Type != study.NoGear {
			if err := asked(Steer, SteerOptions{})(d); err != nil {
				t.Errorf("steer of %s: %v", template.Key, err)
			}
		}
	}
}
