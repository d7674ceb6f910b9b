package plot

import (
	"slices"
	"testing"
)

func TestGridLevels(t *testing.T) {
	tests := []struct {
		name string
		z    []float64
		most int
		want []float64
	}{
		{"ends left out", []float64{0, 1, nan, 0.5}, 6, []float64{0.2, 0.4, 0.6, 0.8}},
		{"level field", []float64{2, 2}, 6, nil},
		{"holes only", []float64{nan}, 6, nil},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := (Grid{Z: tt.z}).Levels(tt.most); !slices.Equal(got, tt.want) {
				t.Errorf("Levels(%d) = %v, want %v", tt.most, got, tt.want)
			}
		})
	}
}

// An edge's partner has that edge as its own, and partners differ from each other.
func TestPartnersAreMutual(t *testing.T) {
	for above := range 16 {
		z := make([]float64, 4)
		for i, corner := range []int{0, 1, 3, 2} { // rows of a 2×2 grid, against the way round
			z[i] = float64(above >> corner & 1)
		}
		partners := Grid{X: steps(2), Y: steps(2), Z: z}.partners(cell{}, 0.5)
		for edge, partner := range partners {
			if partner != noEdge && (partner == edge || partners[partner] != edge) {
				t.Errorf("corners %04b: partners %v", above, partners)
			}
		}
	}
}
