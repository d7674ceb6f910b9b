package nlp

import "math"

// reference is a published fit with certified results.
type reference struct {
	name   string
	source string
	curve  curve
	t, y   []float64
	starts [][]float64
	// Certified parameters, their standard deviations and the residual sum of
	// squares.
	x, sd []float64
	sum   float64
	// Relative tolerance: the certified digits, less for the hardest sets.
	tol float64
}

// curve is a function of t with its derivatives by the parameters x.
type curve func(x []float64, t float64, gradient []float64) float64

func line(x []float64, t float64, g []float64) float64 {
	g[0], g[1] = 1, t
	return x[0] + x[1]*t
}

// saturation is x₀(1 - exp(-x₁t)).
func saturation(x []float64, t float64, g []float64) float64 {
	e := math.Exp(-x[1] * t)
	g[0], g[1] = 1-e, x[0]*t*e
	return x[0] * (1 - e)
}

// kowalik is x₀(t² + x₁t)/(t² + x₂t + x₃).
func kowalik(x []float64, t float64, g []float64) float64 {
	top, bottom := t*t+x[1]*t, t*t+x[2]*t+x[3]
	f := x[0] * top / bottom
	g[0], g[1], g[2], g[3] = top/bottom, x[0]*t/bottom, -f*t/bottom, -f/bottom
	return f
}

// cubicRatio is (x₀+x₁t+x₂t²+x₃t³)/(1+x₄t+x₅t²+x₆t³).
func cubicRatio(x []float64, t float64, g []float64) float64 {
	powers := [4]float64{1, t, t * t, t * t * t}
	top, bottom := 0.0, 1.0
	for k, p := range powers {
		top += x[k] * p
		if k > 0 {
			bottom += x[3+k] * p
		}
	}
	for k, p := range powers {
		g[k] = p / bottom
		if k > 0 {
			g[3+k] = -top / bottom * p / bottom
		}
	}
	return top / bottom
}

// nistSource says where certified fits come from.
const nistSource = "NIST Statistical Reference Datasets, itl.nist.gov/div898/strd (public domain), certified values: "

var references = []reference{
	{
		name:   "thermometer of the GUM",
		source: "JCGM 100:2008, example H.3: a line through the corrections of a thermometer, about 20 °C. Data and figures read in texts that quote it, the digits beyond those recomputed.",
		curve:  line, tol: 1e-6,
		t:      shifted(-20, 21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511),
		y:      []float64{-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160},
		starts: [][]float64{{0, 0}},
		x:      []float64{-0.171203790, 0.002182698}, sd: []float64{0.002877598, 0.000667939},
		sum: 0.000110096583109,
	},
	{
		name:   "NIST Norris",
		source: nistSource + "a line, of lower difficulty; the residual standard deviation is 0.884796396144373 on 34 degrees of freedom. Limits are a share of each figure, set by the digits that are certified and by how hard the set is.",
		curve:  line, tol: 1e-10,
		t:      []float64{0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777, 558.2, 0.4, 0.6, 775.5, 666.9, 338, 447.5, 11.6, 556, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999, 779, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5},
		y:      []float64{0.1, 338.8, 118.1, 888, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9, 10.8, 557.7, 228.3, 998, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2},
		starts: [][]float64{{0, 0}, {100, -3}},
		x:      []float64{-0.262323073774029, 1.00211681802045}, sd: []float64{0.232818234301152, 0.000429796848199937},
		sum: 0.884796396144373 * 0.884796396144373 * 34,
	},
	{
		name:   "NIST Misra1a",
		source: nistSource + "a saturating exponential, of lower difficulty. Limits are a share of each figure, set by the digits that are certified and by how hard the set is.",
		curve:  saturation, tol: 1e-9,
		t:      []float64{77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0},
		y:      []float64{10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.40, 75.47, 81.78},
		starts: [][]float64{{500, 0.0001}, {250, 0.0005}},
		x:      []float64{2.3894212918e+02, 5.5015643181e-04}, sd: []float64{2.7070075241e+00, 7.2668688436e-06},
		sum: 1.2455138894e-01,
	},
	{
		name:   "NIST MGH09",
		source: nistSource + "Kowalik and Osborne's ratio, of higher difficulty. Limits are a share of each figure, set by the digits that are certified and by how hard the set is.",
		curve:  kowalik, tol: 1e-8,
		t:      []float64{4, 2, 1, 0.5, 0.25, 0.167, 0.125, 0.1, 0.0833, 0.0714, 0.0625},
		y:      []float64{0.1957, 0.1947, 0.1735, 0.16, 0.0844, 0.0627, 0.0456, 0.0342, 0.0323, 0.0235, 0.0246},
		starts: [][]float64{{25, 39, 41.5, 39}, {0.25, 0.39, 0.415, 0.39}},
		x:      []float64{1.9280693458e-01, 1.9128232873e-01, 1.2305650693e-01, 1.3606233068e-01},
		sd:     []float64{1.1435312227e-02, 1.9633220911e-01, 8.0842031232e-02, 9.0025542308e-02},
		sum:    3.0750560385e-04,
	},
	{
		name:   "NIST Thurber",
		source: nistSource + "a ratio of cubics, of higher difficulty. Limits are a share of each figure, set by the digits that are certified and by how hard the set is.",
		curve:  cubicRatio, tol: 1e-8,
		t:      []float64{-3.067, -2.981, -2.921, -2.912, -2.84, -2.797, -2.702, -2.699, -2.633, -2.481, -2.363, -2.322, -1.501, -1.460, -1.274, -1.212, -1.100, -1.046, -0.915, -0.714, -0.566, -0.545, -0.400, -0.309, -0.109, -0.103, 0.01, 0.119, 0.377, 0.79, 0.963, 1.006, 1.115, 1.572, 1.841, 2.047, 2.2},
		y:      []float64{80.574, 84.248, 87.264, 87.195, 89.076, 89.608, 89.868, 90.101, 92.405, 95.854, 100.696, 101.060, 401.672, 390.724, 567.534, 635.316, 733.054, 759.087, 894.206, 990.785, 1090.109, 1080.914, 1122.643, 1178.351, 1260.531, 1273.514, 1288.339, 1327.543, 1353.863, 1414.509, 1425.208, 1421.384, 1442.962, 1464.350, 1468.705, 1447.894, 1457.628},
		starts: [][]float64{{1000, 1000, 400, 40, 0.7, 0.3, 0.03}, {1300, 1500, 500, 75, 1, 0.4, 0.05}},
		x:      []float64{1.2881396800e+03, 1.4910792535e+03, 5.8323836877e+02, 7.5416644291e+01, 9.6629502864e-01, 3.9797285797e-01, 4.9727297349e-02},
		sd:     []float64{4.6647963344e+00, 3.9571156086e+01, 2.8698696102e+01, 5.5675370270e+00, 3.1333340687e-02, 1.4984928198e-02, 6.5842344623e-03},
		sum:    5.6427082397e+03,
	},
}

// model returns the residuals curve - y, each with standard deviation 1.
func (r reference) model() Model {
	gradient := make([]float64, len(r.x))
	return functionModel{Size{len(r.x), len(r.t), 0}, func(x []float64, v *Values) bool {
		for i, t := range r.t {
			v.R[i] = r.curve(x, t, gradient) - r.y[i]
			setRow(v.JR, i, gradient...)
		}
		return true
	}}
}

func shifted(by float64, values ...float64) []float64 {
	for i := range values {
		values[i] += by
	}
	return values
}
