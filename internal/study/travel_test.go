package study

import "testing"

func TestWindow(t *testing.T) {
	tests := []struct {
		name           string
		doc            Document
		want, searched Travel
	}{
		{"nothing stated", Document{Units: Millimetre}, Travel{50, 50, 5}, Travel{50, 50, 5}},
		{"nothing stated, inches", Document{Units: Inch}, Travel{2, 2, 0.25}, Travel{2, 2, 0.25}},
		{"no step", Document{Units: Millimetre, Travel: &Travel{80, 60, 0}}, Travel{80, 60, 5}, Travel{80, 60, 5}},
		{"all stated", Document{Units: Inch, Travel: &Travel{3, 1, 0.5}}, Travel{3, 1, 0.5}, Travel{3, 1, 0.5}},
		{
			"search of its own", Document{Travel: &Travel{80, 80, 2}, Search: &Search{Window: &Travel{50, 40, 0}}},
			Travel{80, 80, 2}, Travel{50, 40, 2},
		},
		{"search without one", Document{Travel: &Travel{80, 80, 2}, Search: &Search{}}, Travel{80, 80, 2}, Travel{80, 80, 2}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := tt.doc.Window(); got != tt.want {
				t.Errorf("Window() = %+v, want %+v", got, tt.want)
			}
			if got := tt.doc.SearchWindow(); got != tt.searched {
				t.Errorf("SearchWindow() = %+v, want %+v", got, tt.searched)
			}
		})
	}
}
