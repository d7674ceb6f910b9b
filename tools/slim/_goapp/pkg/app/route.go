package app

// router maps paths to the components that stand there. Unlike the one that it stands
// for, it knows no regular expression but the empty one, which matches every path.
type router struct {
	routes   map[string]func() Composer
	anywhere func() Composer
}

func makeRouter() router {
	return router{routes: map[string]func() Composer{}}
}

func (r *router) route(path string, newComponent func() Composer) {
	r.routes[path] = newComponent
}

func (r *router) routeWithRegexp(pattern string, newComponent func() Composer) {
	if pattern != "" {
		panic("in the browser a route has a path, or the empty pattern: " + pattern)
	}
	r.anywhere = newComponent
}

func (r *router) createComponent(path string) (Composer, bool) {
	if newComponent, ok := r.routes[path]; ok {
		return newComponent(), true
	}
	if r.anywhere != nil {
		return r.anywhere(), true
	}
	return nil, false
}
