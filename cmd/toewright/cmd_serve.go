package main

import (
	"fmt"
	"log/slog"
	"net"
	"net/http"

	"github.com/spf13/cobra"

	"toewright/internal/version"
	"toewright/internal/web"
	"toewright/internal/web/api"
)

// serveOptions say where the server listens and what it answers to.
type serveOptions struct {
	address, metricsAddress, basePath string
	hosts                             []string
}

func newServeCommand() *cobra.Command {
	var o serveOptions
	cmd := &cobra.Command{
		Use:   "serve",
		Short: "Serve the page and the HTTP calls",
		Long: `Serve the page and the HTTP calls until interrupted.

The server can be reached from this machine alone unless --address says otherwise.
It answers to the names of the loopback, to the host of --address and to those that
--host states, and to no others, so that a page of another site cannot use it through
a visitor's browser. It has no accounts and no encryption: put it behind something
that has before others can reach it.`,
		Args: usage(cobra.NoArgs),
		RunE: func(cmd *cobra.Command, _ []string) error {
			if err := o.clean(); err != nil {
				return &usageError{cmd.CommandPath(), err}
			}
			return o.serve(cmd)
		},
	}
	f := cmd.Flags()
	f.StringVar(&o.address, "address", "127.0.0.1:8321", "host and port to listen on; port 0 takes any that is free")
	f.StringArrayVar(&o.hosts, "host", nil, "`name` that the server answers to besides those of this machine; may be given again")
	f.StringVar(&o.basePath, "base-path", "", "path of the page on its host, such as /toe")
	f.StringVar(&o.metricsAddress, "metrics-address", "", "host and port to serve /metrics on, to whoever reaches it; where not given it is served with the rest, to this machine alone")
	return cmd
}

// clean brings the options into the form in which they are used, and names one that
// cannot be.
func (o *serveOptions) clean() (err error) {
	if o.basePath, err = cleaned("--base-path", o.basePath, web.CleanBasePath); err != nil {
		return err
	}
	for i := range o.hosts {
		if o.hosts[i], err = cleaned("--host", o.hosts[i], web.CleanHost); err != nil {
			return err
		}
	}
	if host, _, err := net.SplitHostPort(o.address); err == nil && !everywhere(host) {
		if name, err := web.CleanHost(host); err == nil {
			o.hosts = append(o.hosts, name)
		}
	}
	return nil
}

func cleaned(flag, value string, clean func(string) (string, error)) (string, error) {
	out, err := clean(value)
	if err != nil {
		return "", fmt.Errorf("%s %.60q: %w", flag, value, err)
	}
	return out, nil
}

// everywhere reports whether a host to listen on stands for all addresses.
func everywhere(host string) bool {
	ip := net.ParseIP(host)
	return host == "" || ip != nil && ip.IsUnspecified()
}

// serve listens and answers until the command's context ends.
func (o *serveOptions) serve(cmd *cobra.Command) error {
	service := api.New(api.Config{
		Version:  version.Name(),
		Logger:   slog.New(slog.NewJSONHandler(cmd.ErrOrStderr(), nil)), // a line of JSON for each call
		Stopping: cmd.Context().Done(),
	})
	cfg := web.Config{BasePath: o.basePath, API: service, Hosts: o.hosts}
	var sites []site
	if o.metricsAddress == "" {
		cfg.Metrics = service.Metrics
	} else {
		listener, err := listen("--metrics-address", o.metricsAddress)
		if err != nil {
			return err
		}
		defer listener.Close()
		apart := http.NewServeMux()
		apart.Handle("/metrics", service.Metrics)
		sites = append(sites, site{listener, apart})
		fmt.Fprintf(cmd.OutOrStdout(), "Metrics are at http://%s/metrics\n", listener.Addr())
	}
	handler, err := web.NewHandler(cfg)
	if err != nil {
		return err
	}
	listener, err := listen("--address", o.address)
	if err != nil {
		return err
	}
	defer listener.Close()
	fmt.Fprintf(cmd.OutOrStdout(), "Toewright is at http://%s%s/ (Ctrl-C stops it)\n", listener.Addr(), o.basePath)
	return serve(cmd.Context(), append(sites, site{listener, handler})...)
}

func listen(flag, address string) (net.Listener, error) {
	listener, err := net.Listen("tcp", address)
	if err != nil {
		return nil, fmt.Errorf("cannot serve at %s %s: %w", flag, address, err)
	}
	return listener, nil
}
