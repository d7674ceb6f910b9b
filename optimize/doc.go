// Package optimize holds the searches: it makes the residuals of a [Model]
// small within bounds and limits, and estimates parameters from readings.
//
// [Run] minimises either the root of the weighted mean square or the largest
// size of the residuals ([Objective]) over a box of [Variable]s, subject to
// optional limits g(x) <= 0. It looks for the global minimum: restarts spread
// over the box by a scrambled Halton sequence are each polished to a local
// minimum, more of them where few agree. The answer counts how many do, so a
// reader can judge how far it may be called global.
//
// The polish is a sequential convex method. At each step the residuals and
// limits are linearised, a secant estimate of the curvature that this leaves
// out is added, and the resulting convex program is solved by an interior-point
// method inside a trust region. Root mean square, largest size, and the worst of
// several groups (one part that must serve several set-ups) differ only in how
// that program is written: see the types meanSquare, peaks and worstSquare.
//
// [LeastSquares] is the Levenberg-Marquardt method with priors and robust
// losses, for fits whose covariance matters and which have no bounds.
//
// [FitCar] binds it to gauge readings: a [FittedCar] is the most likely car behind
// them, and how well it is known. From there [FittedCar.Advise] says which spacers
// to fit, [FittedCar.Predict] what any candidate would do, with its band,
// [FittedCar.NextMeasurements] what would narrow an advice most, and
// [FittedCar.Verify] whether readings after the work agree. [GaugeFit.Slips] looks
// for readings that were written down wrongly.
//
// Everything here is pure computation. The same input, seed included, gives the
// same bytes on one platform; platforms that round differently agree to the
// tolerance of the polish.
// No method calls a [Model] from two goroutines at once.
package optimize
