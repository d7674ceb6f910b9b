package store

import "strings"

// Habits are how the reader works, whatever the study: no part of any, as a [Place].
type Habits struct {
	LeftHanded bool // the large key of the keypad is at the left edge
	Fine       bool // readings are typed in the marks of a dial
}

// habitWords are the words that stand for habits, in the order of [Habits].
var habitWords = [...]string{"left-handed", "fine"}

func (h *Habits) all() [len(habitWords)]*bool { return [...]*bool{&h.LeftHanded, &h.Fine} }

// SetHabits notes how the reader works.
func (s *Store) SetHabits(h Habits) error {
	var words []string
	for i, on := range h.all() {
		if *on {
			words = append(words, habitWords[i])
		}
	}
	return s.storage.Set(habitsKey, seal("habits", strings.Join(words, " ")))
}

// Habits returns what was noted last; none where nothing was that can be read.
func (s *Store) Habits() (h Habits) {
	for _, word := range strings.Fields(noted(s.storage, habitsKey, "habits")) {
		for i, on := range h.all() {
			if word == habitWords[i] {
				*on = true
			}
		}
	}
	return h
}
