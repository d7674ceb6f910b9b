package web

import (
	"fmt"
	"io/fs"
	"net/http"
)

// Config says what is served. The zero value serves the embedded page at the root,
// and no calls.
type Config struct {
	// API answers what lies under /api/, and /healthz. It sees the path without
	// BasePath.
	API http.Handler
	// Metrics answers /metrics, to those who ask from this machine.
	Metrics http.Handler
	// Hosts are the names that the server answers to, as [CleanHost] returns them,
	// besides those of the loopback.
	Hosts []string
	// BasePath is where the page stands on its host, such as "/tools/toe", if not
	// at the root. A slash at the end makes no difference.
	BasePath string
	// Assets holds the built front end in place of [Assets].
	Assets fs.FS
}

// NewHandler returns the handler for all that the server serves. It fails if the
// assets cannot be read, or where BasePath is none.
func NewHandler(cfg Config) (http.Handler, error) {
	if cfg.Assets == nil {
		cfg.Assets = Assets()
	}
	files, err := loadAssets(cfg.Assets)
	if err != nil {
		return nil, err
	}
	base, err := CleanBasePath(cfg.BasePath)
	if err != nil {
		return nil, fmt.Errorf("web: the base path %.40q: %w", cfg.BasePath, err)
	}
	mux := http.NewServeMux()
	if cfg.API != nil {
		mux.Handle("/api/", cfg.API)
	}
	if cfg.Metrics != nil {
		mux.Handle("/metrics", local(cfg.Metrics))
	}
	if err := addPage(mux, files); err != nil {
		return nil, err
	}
	all := http.NewServeMux()
	all.Handle("/", guarded(cfg.Hosts, underBase(base, mux)))
	if cfg.API != nil {
		all.Handle(base+healthPath, http.StripPrefix(base, cfg.API))
	}
	return secured(all), nil
}

// addPage adds the page's routes, or the notice where the front end is not built.
func addPage(mux *http.ServeMux, files assets) error {
	if !files.built() {
		mux.HandleFunc("GET /{$}", serveUnbuilt)
		return nil
	}
	shell, err := renderShell(files, "")
	if err != nil {
		return err
	}
	mux.Handle("GET /web/{name}", files)
	mux.Handle("GET /"+manifestName, files[manifestName])
	for path, file := range shell {
		mux.Handle("GET "+exactly(path), file)
	}
	return nil
}

// underBase serves next at the base path, and sends the base path without its
// last slash to the one with it.
func underBase(base string, next http.Handler) http.Handler {
	if base == "" {
		return next
	}
	mux := http.NewServeMux()
	mux.Handle("GET "+base, http.RedirectHandler(base+"/", http.StatusMovedPermanently))
	mux.Handle(base+"/", http.StripPrefix(base, next))
	return mux
}
