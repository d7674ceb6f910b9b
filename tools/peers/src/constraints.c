/* constraints CASE REPEATS: times libslvs, a solver of geometric constraints, on
 * a corner. The knuckle is a set of points braced by distances; the height of the
 * wheel centre is a parameter solved before the rest. */
#include "case.h"
#include <slvs.h>

enum { GIVEN = 1, SOUGHT = 2, MAX_KNUCKLE = 8 };

typedef struct {
	Slvs_System sys;
	Slvs_Param param[100];
	Slvs_Entity entity[60];
	Slvs_Constraint constraint[60];
	int knuckle[MAX_KNUCKLE]; /* entities of the knuckle's points */
	vec still[MAX_KNUCKLE];   /* their static places */
	int n;
	int base[3];              /* points that carry the spin axis */
	vec spin;                 /* in their frame */
	Slvs_Param *height;
	double height0;
} model;

static int add_point(model *m, vec v, int group, int zgroup) {
	Slvs_System *s = &m->sys;
	double at[3] = {v.x, v.y, v.z};
	for (int i = 0; i < 3; i++) {
		s->param[s->params] = Slvs_MakeParam(s->params + 1, i == 2 ? zgroup : group, at[i]);
		s->params++;
	}
	s->entity[s->entities] = Slvs_MakePoint3d(s->entities + 1, group, s->params - 2, s->params - 1, s->params);
	return ++s->entities;
}

static void constrain(model *m, int type, double value, int a, int b, int c, int d) {
	Slvs_System *s = &m->sys;
	s->constraint[s->constraints] = Slvs_MakeConstraint(s->constraints + 1, SOUGHT, type, SLVS_FREE_IN_3D, value, a, b, c, d);
	s->constraints++;
}

static int knuckle_point(model *m, vec v, int zgroup) {
	m->still[m->n] = v;
	m->knuckle[m->n++] = add_point(m, v, SOUGHT, zgroup);
	return m->n - 1;
}

static void brace(model *m, int i, int j) {
	constrain(m, SLVS_C_PT_PT_DISTANCE, norm(sub(m->still[i], m->still[j])), m->knuckle[i], m->knuckle[j], 0, 0);
}

static void rod(model *m, const kase *k, const char *inner, const char *outer, int at) {
	vec a = point(k, inner), b = point(k, outer);
	constrain(m, SLVS_C_PT_PT_DISTANCE, norm(sub(a, b)), add_point(m, a, GIVEN, GIVEN), m->knuckle[at], 0, 0);
}

static double volume(const model *m, int a, int b, int c, int d) {
	vec o = m->still[a];
	return fabs(dot(sub(m->still[b], o), cross(sub(m->still[c], o), sub(m->still[d], o))));
}

/* brace_all makes the knuckle rigid: the fattest tetrahedron of its points, and
 * three distances for each other point. */
static void brace_all(model *m) {
	int t[4] = {0, 1, 2, 3};
	double best = -1;
	for (int a = 0; a < m->n; a++)
		for (int b = a + 1; b < m->n; b++)
			for (int c = b + 1; c < m->n; c++)
				for (int d = c + 1; d < m->n; d++)
					if (volume(m, a, b, c, d) > best) {
						best = volume(m, a, b, c, d);
						t[0] = a, t[1] = b, t[2] = c, t[3] = d;
					}
	for (int i = 0; i < 4; i++)
		for (int j = i + 1; j < 4; j++) brace(m, t[i], t[j]);
	for (int p = 0; p < m->n; p++) {
		if (p == t[0] || p == t[1] || p == t[2] || p == t[3]) continue;
		int out = 0;
		for (int i = 1; i < 4; i++) /* leave out the corner whose face is fattest with p */
			if (volume(m, p, t[(i + 1) % 4], t[(i + 2) % 4], t[(i + 3) % 4]) >
			    volume(m, p, t[(out + 1) % 4], t[(out + 2) % 4], t[(out + 3) % 4])) out = i;
		for (int i = 0; i < 4; i++)
			if (i != out) brace(m, p, t[i]);
	}
	for (int i = 0; i < 3; i++) m->base[i] = t[i];
}

static int line(model *m, int a, int b) {
	Slvs_System *s = &m->sys;
	s->entity[s->entities] = Slvs_MakeLineSegment(s->entities + 1, SOUGHT, SLVS_FREE_IN_3D, a, b);
	return ++s->entities;
}

/* slide lets the strut's axis pass through its mount: the mount is as far from
 * each of two pairs of points that mirror each other in the axis. */
static void slide(model *m, const kase *k) {
	vec top = point(k, "strutTop"), low = point(k, "strutLower"), dir = unit(sub(top, low));
	vec side = unit(cross(dir, (vec){1, 0, 0}));
	int mount = add_point(m, top, GIVEN, GIVEN);
	for (int i = 0; i < 2; i++) {
		vec at = add(low, scale(i * 150, dir)), off = scale(150, i ? cross(dir, side) : side);
		int a = knuckle_point(m, add(at, off), SOUGHT), b = knuckle_point(m, sub(at, off), SOUGHT);
		constrain(m, SLVS_C_EQUAL_LENGTH_LINES, 0, 0, 0, line(m, mount, m->knuckle[a]), line(m, mount, m->knuckle[b]));
	}
}

static vec at(const model *m, int i) {
	const Slvs_Param *p = &m->param[m->entity[m->knuckle[i] - 1].param[0] - 1];
	return (vec){p[0].val, p[1].val, p[2].val};
}

static void frame(const model *m, vec e[3]) {
	vec a = at(m, m->base[0]), b = at(m, m->base[1]), c = at(m, m->base[2]);
	e[0] = unit(sub(b, a));
	e[2] = unit(cross(e[0], sub(c, a)));
	e[1] = cross(e[2], e[0]);
}

static void build(model *m, const kase *k) {
	memset(m, 0, sizeof *m);
	m->sys.param = m->param;
	m->sys.entity = m->entity;
	m->sys.constraint = m->constraint;
	knuckle_point(m, point(k, "wheelCentre"), GIVEN);
	m->height = &m->param[2];
	m->height0 = m->height->val;
	if (!strcmp(k->kind, "multi-link")) {
		for (int i = 0; i < 4; i++) {
			char inner[32], outer[32];
			sprintf(inner, "rods.%d.inner", i);
			sprintf(outer, "rods.%d.outer", i);
			rod(m, k, inner, outer, knuckle_point(m, point(k, outer), SOUGHT));
		}
	} else {
		int lower = knuckle_point(m, point(k, "lowerBallJoint"), SOUGHT);
		rod(m, k, "lowerFrontPivot", "lowerBallJoint", lower);
		rod(m, k, "lowerRearPivot", "lowerBallJoint", lower);
	}
	if (!strcmp(k->kind, "double-wishbone")) {
		int upper = knuckle_point(m, point(k, "upperBallJoint"), SOUGHT);
		rod(m, k, "upperFrontPivot", "upperBallJoint", upper);
		rod(m, k, "upperRearPivot", "upperBallJoint", upper);
	}
	if (!strcmp(k->kind, "strut")) slide(m, k);
	rod(m, k, "tieRodInner", "tieRodOuter", knuckle_point(m, point(k, "tieRodOuter"), SOUGHT));
	brace_all(m);
	vec e[3], s = spin_axis(k);
	frame(m, e);
	m->spin = (vec){dot(s, e[0]), dot(s, e[1]), dot(s, e[2])};
}

static int sweep(model *m, const kase *k, double *toe) {
	int zero = zero_of(k);
	Slvs_Param start[100];
	memcpy(start, m->param, sizeof start);
	for (int way = 1; way >= -1; way -= 2) {
		memcpy(m->param, start, sizeof start);
		for (int i = way > 0 ? zero : zero - 1; i >= 0 && i < k->travels; i += way) {
			m->height->val = m->height0 + k->travel[i];
			Slvs_Solve(&m->sys, SOUGHT);
			if (m->sys.result != SLVS_RESULT_OKAY) return 0;
			vec e[3];
			frame(m, e);
			vec s = add(scale(m->spin.x, e[0]), add(scale(m->spin.y, e[1]), scale(m->spin.z, e[2])));
			toe[i] = atan2(s.x, s.y) / DEG;
		}
	}
	memcpy(m->param, start, sizeof start);
	return 1;
}

int main(int argc, char **argv) {
	static kase k;
	static model m;
	static double toe[MAX_TRAVELS];
	if (argc < 3 || !read_case(argv[1], &k)) return 1;
	build(&m, &k);
	for (int r = 0; r < atoi(argv[2]); r++) {
		double t = now_ns();
		if (!sweep(&m, &k, toe)) {
			fprintf(stderr, "libslvs did not converge\n");
			return 1;
		}
		printf("time %.1f\n", now_ns() - t);
	}
	for (int i = 0; i < k.travels; i++) printf("toe %.12f\n", toe[i]);
	return 0;
}
