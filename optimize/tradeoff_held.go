package optimize

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"toewright/optimize/nlp"
)

// heldModel is the [Model] of a toe search with an aim held at most at a level. The
// misses of an aim that is the largest of several are each held on both sides, so
// that the size's kink at none is no kink of any limit.
type heldModel struct {
	toe    *toeModel
	aim    *aimModel
	level  float64 // in the aim's scale
	misses nlp.Values
	own    nlp.Values // the first limits, those of the toe search
}

func newHeldModel(toe *toeModel, aim *aimModel, level float64) *heldModel {
	all := nlp.NewValues(nlp.Size{Variables: len(toe.free), Residuals: aim.rows()})
	own := nlp.NewValues(toe.Size())
	return &heldModel{toe: toe, aim: aim, level: level, misses: all, own: nlp.Values{JG: own.JG}}
}

// Size implements [Model].
func (h *heldModel) Size() nlp.Size {
	size := h.toe.Size()
	if h.aim.aim.Of == nil {
		size.Limits++
	} else {
		size.Limits += 2 * h.aim.rows()
	}
	return size
}

// Evaluate implements [Model].
func (h *heldModel) Evaluate(x []float64, v *nlp.Values) bool {
	n := h.toe.Size().Limits
	toe := nlp.Values{R: v.R, G: v.G[:n], JR: v.JR}
	if v.JG != nil {
		toe.JG = h.own.JG
	}
	var rates *mat.Dense
	if v.JG != nil {
		rates = h.misses.JR
	}
	if !h.toe.Evaluate(x, &toe) || !h.aim.misses(x, h.misses.R, rates) {
		return false
	}
	for i := 0; i < n && v.JG != nil; i++ {
		v.JG.SetRow(i, h.own.JG.RawRowView(i))
	}
	if h.aim.aim.Of == nil {
		h.holdDistance(n, v)
	} else {
		h.holdEach(n, v)
	}
	return true
}

// holdEach sets two limits for each miss, from row on.
func (h *heldModel) holdEach(row int, v *nlp.Values) {
	for i, m := range h.misses.R {
		for k, sign := range [2]float64{1, -1} {
			v.G[row+2*i+k] = sign*m - h.level
			if v.JG == nil {
				continue
			}
			for j, d := range h.misses.JR.RawRowView(i) {
				v.JG.Set(row+2*i+k, j, sign*d)
			}
		}
	}
}

// holdDistance sets the limit of the size of all misses.
func (h *heldModel) holdDistance(row int, v *nlp.Values) {
	size := h.aim.size(h.misses.R)
	v.G[row] = size - h.level
	if v.JG == nil {
		return
	}
	slope := v.JG.RawRowView(row)
	clear(slope)
	for i, m := range h.misses.R {
		for j, d := range h.misses.JR.RawRowView(i) {
			slope[j] += d * m / math.Max(size, math.SmallestNonzeroFloat64)
		}
	}
}
