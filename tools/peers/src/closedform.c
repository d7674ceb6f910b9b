/* closedform CASE REPEATS: times the closed form of wishbone.h. */
#include "wishbone.h"

int main(int argc, char **argv) {
	static kase k;
	static position out[MAX_TRAVELS];
	wishbone w;
	if (argc < 3 || !read_case(argv[1], &k)) return 1;
	init_wishbone(&k, point(&k, "tieRodOuter"), point(&k, "tieRodInner"), &w);
	for (int r = 0; r < atoi(argv[2]); r++) {
		enum { INNER = 20 };
		double t = now_ns();
		for (int i = 0; i < INNER; i++)
			if (!sweep_wishbone(&w, &k, out)) return 1;
		printf("time %.1f\n", (now_ns() - t) / INNER);
	}
	for (int i = 0; i < k.travels; i++) printf("toe %.12f\n", out[i].toe / DEG);
	return 0;
}
