// Package root is the page.
package root

import "github.com/vugu/vugu"

// FirstView is the page as it stands before the program runs.
func FirstView() vugu.Builder { return &Root{} }
