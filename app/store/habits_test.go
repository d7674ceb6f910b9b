package store

import "testing"

func TestHabits(t *testing.T) {
	kept := Memory{}
	if got := tab(kept, 1).Habits(); got != (Habits{}) {
		t.Errorf("habits before any = %+v, want none", got)
	}
	for _, want := range []Habits{{LeftHanded: true}, {Fine: true}, {LeftHanded: true, Fine: true}, {}} {
		if err := tab(kept, 1).SetHabits(want); err != nil {
			t.Fatal(err)
		}
		if got := tab(kept, 2).Habits(); got != want {
			t.Errorf("habits = %+v, want %+v", got, want)
		}
	}
	kept[habitsKey] = "toewright-habits/1 00000000\nfine"
	if got := tab(kept, 1).Habits(); got != (Habits{}) {
		t.Errorf("damaged habits = %+v, want none", got)
	}
}
