module riserwork

go 1.26.8

require (
	github.com/maxence-charriere/go-app/v9 v9.8.0 // indirect
	github.com/stretchr/testify v1.12.1 // indirect
	go.yaml.in/yaml/v3 v3.0.5 // indirect
)
