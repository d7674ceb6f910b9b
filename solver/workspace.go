package solver

// Workspace is the scratch memory in which an axle is moved. It may be used
// again, for any axle, by one goroutine at a time.
type Workspace struct {
	tracer  tracer
	corner  cornerPath
	beam    beamPath
	wheel   wheelPose
	joints  [2]heldJoints
	rates   rateScratch
	instant axleInstant
	origin  state // solution where a sweep starts
}

// NewWorkspace returns scratch memory. The zero Workspace is ready too.
func NewWorkspace() *Workspace { return &Workspace{} }
