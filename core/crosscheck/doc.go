// Package crosscheck holds no code but tests: the report against the frozen answers of
// general-purpose solvers and of a physics engine in testdata/peers and testdata/engine.
package crosscheck
