// Package nlp is the numerical core of the searches and fits: nonlinear programs, least
// squares and the small dense linear algebra that they need. It knows nothing of cars.
//
// [Run] minimises either the root of the weighted mean square or the largest
// size of the residuals ([Objective]) of a [Model] over a box of [Variable]s, subject
// to optional limits g(x) <= 0. It looks for the global minimum: restarts spread
// over the box by a scrambled [Halton] sequence each lead to a local minimum
// ([LocalSearch]), more of them where few agree. The answer counts how many do, so a
// reader can judge how far it may be called global.
//
// A local search is a sequential convex method. At each step the residuals and
// limits are linearised, a secant estimate of the curvature that this leaves
// out is added, and the resulting convex program is solved by an active set or by an
// interior-point method inside a trust region. Root mean square, largest size, and the
// worst of several groups (one part that must serve several set-ups) differ only in how
// that program is written: see the types meanSquare, peaks and worstSquare.
//
// [LeastSquares] is the Levenberg-Marquardt method with priors and robust
// losses, for fits whose covariance matters and which have no bounds. [NelderMead],
// [Root] and [Extreme] need no derivatives.
//
// The same input, seed included, gives the same bytes on one platform; platforms that
// round differently agree to the tolerance of the method. No method calls a [Model] from
// two goroutines at once.
package nlp
