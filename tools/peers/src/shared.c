/* The C sweep as a library, for searches in other languages. */
#include "toesearch.h"

static toe_search s;

int open_case(const char *path) { return read_case(path, &s.k); }
double objective(const double *x) { return toe_rms(&s, x); }
