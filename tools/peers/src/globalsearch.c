/* globalsearch CASE REPEATS LOW... HIGH...: times NLopt's DIRECT-L, stopped when
 * a round improves by less than 1e-4, polished by SBPLX, on a sweep in C. */
#include "toesearch.h"
#include <nlopt.h>

static double objective(unsigned n, const double *x, double *gradient, void *data) {
	(void)n, (void)gradient;
	return toe_rms(data, x);
}

static double minimise(nlopt_algorithm method, double tolerance, toe_search *s, const double *low, const double *high, double *x) {
	double best;
	nlopt_opt o = nlopt_create(method, VARIABLES);
	nlopt_set_min_objective(o, objective, s);
	nlopt_set_lower_bounds(o, low);
	nlopt_set_upper_bounds(o, high);
	nlopt_set_ftol_rel(o, tolerance);
	nlopt_set_maxeval(o, 100000);
	if (nlopt_optimize(o, x, &best) < 0) best = HUGE_VAL;
	nlopt_destroy(o);
	return best;
}

int main(int argc, char **argv) {
	static toe_search s;
	double low[VARIABLES], high[VARIABLES];
	if (argc < 3 + 2 * VARIABLES || !read_case(argv[1], &s.k)) return 1;
	for (int i = 0; i < VARIABLES; i++) low[i] = atof(argv[3 + i]), high[i] = atof(argv[3 + VARIABLES + i]);
	for (int r = 0; r < atoi(argv[2]); r++) {
		double x[VARIABLES], t = now_ns();
		for (int i = 0; i < VARIABLES; i++) x[i] = (low[i] + high[i]) / 2;
		s.evaluations = 0;
		minimise(NLOPT_GN_DIRECT_L, 1e-4, &s, low, high, x);
		double best = minimise(NLOPT_LN_SBPLX, 1e-6, &s, low, high, x);
		printf("time %.1f\nbest %.12f\nevaluations %d\n", now_ns() - t, best, s.evaluations);
	}
	return 0;
}
