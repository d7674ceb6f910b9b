package optimize_test

import (
	"testing"

	"toewright/optimize"
)

// TestSpanParts: the parts of a span follow one another from its start to its end,
// and none is more than an item longer than another.
func TestSpanParts(t *testing.T) {
	const huge = 1 << 62
	for _, tt := range []struct {
		name  string
		whole optimize.Span
		parts int
	}{
		{"one", optimize.Span{First: 0, End: 10}, 1},
		{"even", optimize.Span{First: 0, End: 12}, 4},
		{"uneven", optimize.Span{First: 5, End: 15}, 7},
		{"more parts than items", optimize.Span{First: 0, End: 3}, 10},
		{"empty", optimize.Span{First: 4, End: 4}, 3},
		{"huge", optimize.Span{First: 0, End: huge}, 1000},
	} {
		t.Run(tt.name, func(t *testing.T) {
			at, least := tt.whole.First, tt.whole.Len()/tt.parts
			for i := range tt.parts {
				s := tt.whole.Of(i, tt.parts)
				if s.First != at || s.Len() < least || s.Len() > least+1 {
					t.Fatalf("part %d of %d is %+v, want %d or %d items from %d", i, tt.parts, s, least, least+1, at)
				}
				at = s.End
			}
			if at != tt.whole.End {
				t.Errorf("the parts end at %d, want %d", at, tt.whole.End)
			}
		})
	}
}
