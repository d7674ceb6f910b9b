package study

import "testing"

// TestWithOfATakenName: a car asked for by a name that candidates of the study have stands in
// their place, before all others, and the study stays as it is.
func TestWithOfATakenName(t *testing.T) {
	d := templateDoc(t, "double-wishbone-rack")
	taken, count := d.Candidates[1].Name, len(d.Candidates)
	for _, name := range []string{taken, ChangedName, ""} {
		d.Candidates[2].Name = ChangedName
		got, called := d.With(&ChangeSet{Name: name, Changes: Changes{"toe": 0.2}})
		if got.Candidates[0].Name != called || got.Candidates[0].Changes["toe"] != 0.2 || len(got.Candidates) != count {
			t.Errorf("%q: %d candidates, %+v first, want %d", name, len(got.Candidates), got.Candidates[0], count)
		}
		for _, c := range got.Candidates[1:] {
			if c.Name == called {
				t.Errorf("%q stands twice", called)
			}
		}
		if len(d.Candidates) != count || d.Candidates[0].Name == called {
			t.Errorf("the study itself was changed")
		}
	}
}
