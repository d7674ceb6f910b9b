package app

import "strings"

// Handler stands for the server, which the browser does not have.
type Handler struct{}

// clientResourceResolver returns a function that turns /web/ paths into their place
// below a folder, and leaves others as they are.
func clientResourceResolver(folder string) func(string) string {
	return func(location string) string {
		if remoteLocation(location) || !webLocation(location) {
			return location
		}
		return folder + "/" + strings.TrimPrefix(strings.Trim(location, "/"), "web/")
	}
}

func remoteLocation(location string) bool {
	return strings.HasPrefix(location, "https://") || strings.HasPrefix(location, "http://")
}

func webLocation(location string) bool {
	return strings.HasPrefix(strings.TrimPrefix(location, "/")+"/", "web/")
}
