// Command site builds the static site: the program, the page with its first view already drawn, and
// the compressed forms of every file. The result works from any sub-path of any static host.
package main

import (
	"flag"
	"fmt"
	"log"
	"os"
	"time"
)

func main() {
	log.SetFlags(0)
	out := flag.String("out", "dist", "folder to write")
	budget := flag.Int("budget", 1_300_000, "most bytes of a first load, brotli; more is an error")
	plain := flag.Bool("plain", false, "without compressed forms and budget, for a quick try")
	flag.Parse()
	start := time.Now()
	total, err := build(*out, *plain)
	if err != nil {
		log.Fatal("site: ", err)
	}
	if *plain {
		fmt.Printf("%s/ holds the site, not compressed (%.1f s)\n", *out, time.Since(start).Seconds())
		return
	}
	library, err := weigh(*out, "library.wasm", "wasm_exec.js", "cohoist.mjs")
	if err != nil {
		log.Fatal("site: ", err)
	}
	fmt.Printf("%s/ holds the site; first load %d bytes as brotli, budget %d; the library for others %d (%.1f s)\n",
		*out, total, *budget, library, time.Since(start).Seconds())
	if total > *budget {
		log.Print("site: the first load is over its budget")
		os.Exit(1)
	}
}

// build writes the site and returns the size of a first load.
func build(out string, plain bool) (int, error) {
	if err := os.MkdirAll(out, 0o755); err != nil {
		return 0, err
	}
	files, err := collect(out)
	if err != nil {
		return 0, err
	}
	page, err := page(files)
	if err != nil {
		return 0, err
	}
	files["index.html"] = page
	if files["handbook.html"], err = handbook("."); err != nil {
		return 0, err
	}
	if files["offline.js"], err = offline(files); err != nil {
		return 0, err
	}
	if err := write(out, files, plain); err != nil {
		return 0, err
	}
	return weigh(out, first...)
}
