package ui

import (
	"strings"
	"testing"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/app/store"
	"toewright/internal/study"
)

// TestLimitsAskWhereToLook shows the choice of full lock with the results that take it,
// once the study states one.
func TestLimitsAskWhereToLook(t *testing.T) {
	s := onStage(t, store.Memory{}, "search")
	most := 30.0
	s.do(func(app.Context) {
		s.desk.Session.SetLimits("limits", []study.Limit{{Result: "tieRodLength", Max: &most}, {Result: "outerBallAngle", Max: &most, At: study.AtLock}})
		s.panels.asking.limit = 2
	})
	s.do(func(ctx app.Context) { s.panels.show(ctx, "find") })
	s.shows(t, `id="limit-1-at"`, `id="limit-1-side"`, "straight ahead and at both locks", "Outer ball, angle off neutral, also at lock", `id="full-lock"`, "full lock, rack to either side", `value="66.00"`)
	if strings.Contains(s.text(), `id="limit-0-at"`) {
		t.Error("the length of the tie rod has a choice of full lock")
	}
	s.do(func(app.Context) {
		s.desk.Session.SetLimitAt(1, study.AtStraight)
		s.desk.Session.SetLock("")
	})
	s.do(func(ctx app.Context) { s.panels.show(ctx, "find") })
	s.shows(t, `id="full-lock"`)
	if strings.Contains(s.text(), `id="limit-1-at"`) {
		t.Error("full lock can be chosen where the study states none")
	}
	s.do(func(app.Context) {
		s.desk.Session.SetLimits("limits", []study.Limit{{Result: "tieRodLength", Max: &most}})
	})
	s.do(func(ctx app.Context) { s.panels.show(ctx, "find") })
	if strings.Contains(s.text(), `id="full-lock"`) {
		t.Error("full lock is asked for though no limit is looked at there")
	}
}

// TestLimitsSayThePresentValue adds each kind of limit in the Find panel: what the selected
// car has stands beside its bounds.
func TestLimitsSayThePresentValue(t *testing.T) {
	s := onStage(t, store.Memory{}, "search")
	for _, kind := range model.LimitKinds(s.desk.Session.Document()) {
		s.do(func(ctx app.Context) {
			list := []study.Limit{model.NewLimit(s.desk.Session.Document(), s.desk.Session.Cars().Design, string(kind.Key))}
			if err := s.desk.Session.SetLimits("limit", list); err != nil {
				t.Fatal(err)
			}
			s.panels.Changed(ctx)
		})
		list, err := s.desk.Standing(s.desk.Selected())
		if err != nil || len(list) != 1 {
			t.Errorf("%s: %d standings, %v", kind.Label, len(list), err)
			continue
		}
		want := []string{list[0].Value, list[0].SpareText()}
		if list[0].Value == "" {
			want = []string{list[0].Lacks}
		}
		s.shows(t, append(want, kind.Label, "Now is what the selected car has: "+carName(s.desk.Selected()))...)
	}
}
