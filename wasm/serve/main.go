// Command serve shows the built site on this machine, with the headers a careful host would send.
package main

import (
	"errors"
	"flag"
	"fmt"
	"log"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strconv"
	"syscall"

	"cohoist/wasm/serve/site"
)

func main() {
	log.SetFlags(0)
	dir := flag.String("dir", "dist", "folder of the site")
	port := flag.Int("port", 8080, "port to listen on; when it is taken, the next free one of twenty")
	flag.Parse()
	if _, err := os.Stat(filepath.Join(*dir, "index.html")); err != nil {
		log.Fatalf("serve: there is no site in %s; make site builds it", *dir)
	}
	l, err := listen(*port)
	if err != nil {
		log.Fatal("serve: ", err)
	}
	fmt.Printf("Cohoist is at http://%s/  (Ctrl-C ends)\n", l.Addr())
	log.Fatal("serve: ", http.Serve(l, site.Handler(*dir)))
}

// listen takes the port or, when it is in use, one of the next twenty.
func listen(port int) (net.Listener, error) {
	var err error
	for p := port; p <= port+20; p++ {
		var l net.Listener
		if l, err = net.Listen("tcp", "127.0.0.1:"+strconv.Itoa(p)); err == nil {
			return l, nil
		}
		if !errors.Is(err, syscall.EADDRINUSE) {
			return nil, err
		}
	}
	return nil, err
}
