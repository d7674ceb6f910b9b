/* A double wishbone in closed form: the turn of the lower arm gives the lower
 * ball joint, circle and sphere the upper one, three spheres the tie rod's outer
 * ball. A secant search turns the arm until the wheel centre has its height. */
#ifndef WISHBONE_H
#define WISHBONE_H

#include "case.h"

typedef struct { vec centre, cosine, sine; } circle; /* centre + cos·cosine + sin·sine */

typedef struct {
	circle lower, upper;
	double spacing2;                  /* of the ball joints, squared */
	double from_lower2, from_upper2;  /* of the tie rod ball, squared */
	double rod2;                      /* of the tie rod, squared */
	double upper_branch, tie_branch;
	vec inner;
	vec wheel, spin;                  /* in the frame of the three balls */
	double height;                    /* of the wheel centre, static */
} wishbone;

typedef struct { double toe, camber, caster, kpi; vec centre; } position;
typedef struct { vec lower, upper, tie; vec ex, ey, ez, wheel; } placed;

static inline circle circle_about(vec a, vec b, vec p) {
	vec axis = unit(sub(b, a)), arm = sub(p, a);
	circle c;
	c.centre = add(a, scale(dot(arm, axis), axis));
	c.cosine = sub(p, c.centre);
	c.sine = cross(axis, c.cosine);
	return c;
}

static inline vec on_circle(const circle *c, double co, double si) {
	return add(c->centre, add(scale(co, c->cosine), scale(si, c->sine)));
}

/* circle_sphere returns the point of a circle at the squared distance r2 from p. */
static inline vec circle_sphere(const circle *c, vec p, double r2, double branch) {
	vec d = sub(p, c->centre);
	double a = dot(d, c->cosine), b = dot(d, c->sine);
	double k = 0.5 * (dot(c->cosine, c->cosine) + dot(d, d) - r2);
	double n = a * a + b * b, root = branch * sqrt(n - k * k);
	return on_circle(c, (a * k - b * root) / n, (b * k + a * root) / n);
}

static inline void frame(placed *p) {
	p->ex = unit(sub(p->upper, p->lower));
	vec t = sub(p->tie, p->lower);
	p->ey = unit(sub(t, scale(dot(t, p->ex), p->ex)));
	p->ez = cross(p->ex, p->ey);
}

static inline vec from_frame(const placed *p, vec v) {
	return add(scale(v.x, p->ex), add(scale(v.y, p->ey), scale(v.z, p->ez)));
}

/* three_spheres sets the tie rod ball from the ball joints and the inner ball. */
static inline void three_spheres(const wishbone *w, placed *p) {
	vec u = sub(p->upper, p->lower), v = sub(w->inner, p->lower);
	double d = norm(u);
	vec ex = scale(1 / d, u);
	double i = dot(ex, v);
	vec ey = unit(sub(v, scale(i, ex))), ez = cross(ex, ey);
	double j = dot(ey, v);
	double x = (w->from_lower2 - w->from_upper2 + d * d) / (2 * d);
	double y = (w->from_lower2 - w->rod2 + i * i + j * j - 2 * i * x) / (2 * j);
	double z = w->tie_branch * sqrt(w->from_lower2 - x * x - y * y);
	p->tie = add(p->lower, add(scale(x, ex), add(scale(y, ey), scale(z, ez))));
}

static inline void place(const wishbone *w, double turn, placed *p) {
	p->lower = on_circle(&w->lower, cos(turn), sin(turn));
	p->upper = circle_sphere(&w->upper, p->lower, w->spacing2, w->upper_branch);
	three_spheres(w, p);
	frame(p);
	p->wheel = add(p->lower, from_frame(p, w->wheel));
}

static inline double branch_of(vec got, vec want) { return norm(sub(got, want)) < 1e-6 ? 1 : -1; }

/* init_wishbone builds w from the static points; tie and inner are the tie rod's. */
static inline void init_wishbone(const kase *k, vec tie, vec inner, wishbone *w) {
	placed p;
	p.lower = point(k, "lowerBallJoint");
	p.upper = point(k, "upperBallJoint");
	p.tie = tie;
	w->inner = inner;
	w->lower = circle_about(point(k, "lowerFrontPivot"), point(k, "lowerRearPivot"), p.lower);
	w->upper = circle_about(point(k, "upperFrontPivot"), point(k, "upperRearPivot"), p.upper);
	vec a = sub(p.upper, p.lower), b = sub(tie, p.lower), c = sub(tie, p.upper), d = sub(tie, inner);
	w->spacing2 = dot(a, a);
	w->from_lower2 = dot(b, b);
	w->from_upper2 = dot(c, c);
	w->rod2 = dot(d, d);
	frame(&p);
	vec wheel = sub(point(k, "wheelCentre"), p.lower), spin = spin_axis(k);
	w->wheel = (vec){dot(wheel, p.ex), dot(wheel, p.ey), dot(wheel, p.ez)};
	w->spin = (vec){dot(spin, p.ex), dot(spin, p.ey), dot(spin, p.ez)};
	w->height = point(k, "wheelCentre").z;
	w->upper_branch = w->tie_branch = 1;
	w->upper_branch = branch_of(circle_sphere(&w->upper, p.lower, w->spacing2, 1), p.upper);
	placed q = p;
	three_spheres(w, &q);
	w->tie_branch = branch_of(q.tie, tie);
}

static inline void read_angles(const wishbone *w, const placed *p, position *out) {
	vec e = from_frame(p, w->spin), a = sub(p->upper, p->lower);
	out->toe = atan2(e.x, e.y);
	out->camber = asin(-e.z);
	out->caster = atan2(-a.x, a.z);
	out->kpi = atan2(-a.y, a.z);
	out->centre = p->wheel;
}

static const double SECANT_LIMIT = 1e-10; /* mm of wheel-centre height */

/* reach turns the arm from *turn, with *last as the step before, until the wheel
 * centre stands at height z. */
static inline int reach(const wishbone *w, double z, double *turn, double *last, placed *p) {
	double a = *turn, b = *turn + *last, start = *turn;
	place(w, a, p);
	double fa = p->wheel.z - z;
	place(w, b, p);
	double fb = p->wheel.z - z;
	for (int i = 0; i < 30 && fabs(fb) > SECANT_LIMIT && fa != fb; i++) {
		double c = b - fb * (b - a) / (fb - fa);
		a = b, fa = fb, b = c;
		place(w, b, p);
		fb = p->wheel.z - z;
	}
	*turn = b;
	if (b != start) *last = b - start;
	return fabs(fb) < 1e-6;
}

/* sweep_wishbone moves the wheel through the travels of a case, outward from 0. */
static inline int sweep_wishbone(const wishbone *w, const kase *k, position *out) {
	placed p;
	int zero = zero_of(k), ok = 1;
	for (int way = 1; way >= -1; way -= 2) {
		double turn = 0, last = way * 0.01;
		for (int i = way > 0 ? zero : zero - 1; i >= 0 && i < k->travels; i += way) {
			ok &= reach(w, w->height + k->travel[i], &turn, &last, &p);
			read_angles(w, &p, &out[i]);
		}
	}
	return ok;
}

#endif
