package engine

import "toewright/optimize"

// Shard is one of so many shares of a long call's work. They do not overlap, and
// what comes of them adds up to what comes of the whole, to the last digit.
type Shard struct {
	Index int `json:"index"` // from 0
	Of    int `json:"of"`    // > Index
}

// Whole is the only shard of work that is not divided.
var Whole = Shard{Index: 0, Of: 1}

// Span returns which of n numbered items are the shard's.
func (s Shard) Span(n int) optimize.Span { return optimize.Span{End: n}.Of(s.Index, s.Of) }
