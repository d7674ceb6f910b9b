// Package referee judges our searches by general-purpose methods: the same problems
// solved from many starts by the methods of gonum/optimize, none of which may end
// below ours.
package referee
