/* A linkage as the driver hands it to every peer, by name, and small vectors. */
#ifndef CASE_H
#define CASE_H

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

typedef struct { double x, y, z; } vec;

static inline vec add(vec a, vec b) { return (vec){a.x + b.x, a.y + b.y, a.z + b.z}; }
static inline vec sub(vec a, vec b) { return (vec){a.x - b.x, a.y - b.y, a.z - b.z}; }
static inline vec scale(double k, vec a) { return (vec){k * a.x, k * a.y, k * a.z}; }
static inline double dot(vec a, vec b) { return a.x * b.x + a.y * b.y + a.z * b.z; }
static inline vec cross(vec a, vec b) {
	return (vec){a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
static inline double norm(vec a) { return sqrt(dot(a, a)); }
static inline vec unit(vec a) { return scale(1 / norm(a), a); }

enum { MAX_POINTS = 40, MAX_TRAVELS = 400 };
static const double DEG = 3.14159265358979323846 / 180;

/* kase: "kind", "toe" and "camber" in deg, "travel" in mm, "point name x y z", and
 * "dragSide" where a drag link pulls the right knuckle. */
typedef struct {
	char kind[32];
	double toe, camber;
	int points, travels, dragRight;
	struct { char name[32]; vec at; } point[MAX_POINTS];
	double travel[MAX_TRAVELS];
} kase;

static inline int read_case(const char *path, kase *k) {
	char word[32];
	FILE *f = fopen(path, "r");
	memset(k, 0, sizeof *k);
	if (!f) return 0;
	while (fscanf(f, "%31s", word) == 1) {
		int ok = 0;
		if (!strcmp(word, "kind")) ok = fscanf(f, "%31s", k->kind) == 1;
		else if (!strcmp(word, "toe")) ok = fscanf(f, "%lf", &k->toe) == 1;
		else if (!strcmp(word, "camber")) ok = fscanf(f, "%lf", &k->camber) == 1;
		else if (!strcmp(word, "dragSide")) {
			ok = fscanf(f, "%31s", word) == 1;
			k->dragRight = !strcmp(word, "right");
		} else if (!strcmp(word, "travel") && k->travels < MAX_TRAVELS)
			ok = fscanf(f, "%lf", &k->travel[k->travels++]) == 1;
		else if (!strcmp(word, "point") && k->points < MAX_POINTS) {
			vec *v = &k->point[k->points].at;
			ok = fscanf(f, "%31s %lf %lf %lf", k->point[k->points++].name, &v->x, &v->y, &v->z) == 4;
		}
		if (!ok) return 0;
	}
	fclose(f);
	return 1;
}

static inline vec point(const kase *k, const char *name) {
	for (int i = 0; i < k->points; i++)
		if (!strcmp(k->point[i].name, name)) return k->point[i].at;
	fprintf(stderr, "the case has no point %s\n", name);
	exit(1);
}

/* spin_axis returns the static spin axis of a left wheel, outboard. */
static inline vec spin_axis(const kase *k) {
	double t = k->toe * DEG, c = k->camber * DEG;
	return (vec){sin(t) * cos(c), cos(t) * cos(c), -sin(c)};
}

/* zero returns the index of the travel from which a path sets out. */
static inline int zero_of(const kase *k) {
	int i = 0;
	while (i < k->travels - 1 && k->travel[i] < 0) i++;
	return i;
}

/* now_ns returns the processor time that this process has used. */
static inline double now_ns(void) {
	struct timespec t;
	clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
	return t.tv_sec * 1e9 + t.tv_nsec;
}

#endif
