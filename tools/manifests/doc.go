// Package manifests holds the Kubernetes examples of the documentation against the types of
// Kubernetes' own API. It is a module of its own, so that nothing else depends on them.
package manifests
