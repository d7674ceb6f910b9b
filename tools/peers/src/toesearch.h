/* The search of three variables: by how much the tie rod's balls are raised and
 * the steering arm lengthened, to bring the toe change nearest to none. */
#ifndef TOESEARCH_H
#define TOESEARCH_H

#include "wishbone.h"

enum { OUTER_HEIGHT, INNER_HEIGHT, ARM_LENGTH, VARIABLES };

typedef struct {
	kase k;
	int evaluations;
} toe_search;

/* arm_line returns the level direction from the steering axis to the tie rod's
 * ball, at the height of the ball. */
static inline vec arm_line(const kase *k) {
	vec l = point(k, "lowerBallJoint"), u = point(k, "upperBallJoint"), b = point(k, "tieRodOuter");
	vec at = add(l, scale((b.z - l.z) / (u.z - l.z), sub(u, l)));
	return unit((vec){b.x - at.x, b.y - at.y, 0});
}

/* toe_rms returns the root mean square of the toe change over the travels, deg. */
static inline double toe_rms(toe_search *s, const double *x) {
	static position out[MAX_TRAVELS];
	wishbone w;
	const kase *k = &s->k;
	vec tie = add(point(k, "tieRodOuter"), scale(x[ARM_LENGTH], arm_line(k)));
	vec inner = point(k, "tieRodInner");
	tie.z += x[OUTER_HEIGHT];
	inner.z += x[INNER_HEIGHT];
	s->evaluations++;
	init_wishbone(k, tie, inner, &w);
	if (!sweep_wishbone(&w, k, out)) return HUGE_VAL;
	double sum = 0, home = out[zero_of(k)].toe;
	for (int i = 0; i < k->travels; i++) sum += (out[i].toe - home) * (out[i].toe - home);
	return sqrt(sum / k->travels) / DEG;
}

#endif
