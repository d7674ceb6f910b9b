package optimize

// baseFigures returns the figures of the base car, nothing searched for changed.
func (m *toeModel) baseFigures() Figures {
	base := *m
	base.free, base.seeds, base.limits = nil, nil, nil
	f, _ := base.figures(nil)
	return f
}
