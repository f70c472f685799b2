# Everything a person or CI runs. `make demo` and `make test` do all their own set-up.
PYTHON ?= python3
BIN := .venv/bin
RUN := $(BIN)/python -m
RADIO_WORK ?= /tmp/heldwheel-radio
RADIO_TESTS ?= find rec100 stale kill power lock lock3

.PHONY: help setup demo test check lint fmt type wheels contracts bench torture fuzz bundle bundle-check shots notebook real-radio translations lock clean

help: ## this list
	@awk -F ':.*## ' '/^[a-z-]+:.*## / {printf "  make %-10s %s\n", $$1, $$2}' Makefile

setup: .venv/.ready ## make .venv with pinned, hash-checked packages; install what the system lacks

.venv/.ready: .ci/constraints.txt pyproject.toml .ci/system-packages
	@sh .ci/system-packages
	@$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11))' \
	  || { echo "Heldwheel needs Python 3.11 or newer; '$(PYTHON)' is older. Try: make setup PYTHON=python3.12"; exit 1; }
	@test -x $(BIN)/python || $(PYTHON) -m venv .venv
	@echo "installing pinned packages (a few minutes the first time)"
	@$(BIN)/python -m pip install --quiet --disable-pip-version-check --no-deps --require-hashes -r .ci/constraints.txt
	@$(BIN)/python -m pip install --quiet --disable-pip-version-check --no-deps --no-build-isolation -e .
	@touch $@

demo: setup ## the main job, headless, on the built-in virtual transducer
	@$(RUN) tests.demo --out demo-output

test: check ## style, types, contracts and all tests
	@$(BIN)/pytest -n 2 --dist loadgroup -q

check: lint type contracts

lint: setup ## style
	@$(BIN)/ruff check .
	@$(BIN)/ruff format --check .

fmt: setup ## put the code in the house's style
	@$(BIN)/ruff format .
	@$(BIN)/ruff check --fix .

type: setup ## strict types, as on Linux, Windows and macOS
	@$(BIN)/mypy
	@for system in win32 darwin; do $(BIN)/mypy --platform $$system --cache-dir .mypy_cache/$$system || exit 1; done

wheels: setup ## whether every pinned package has a wheel for Windows, macOS and 64-bit ARM; needs the network
	@$(BIN)/python -m pip install --quiet uv
	@$(BIN)/python .ci/wheels.py

contracts: setup ## imports run one way
	@$(BIN)/lint-imports --no-logo

.PHONY: coverage mutants
coverage: setup ## how often stated intervals hold and rules err, each beside its bound (some minutes)
	@$(RUN) tests.coverage

SEED ?= 1
MOST ?= 300
mutants: setup ## one-token mutations that the nearest tests must notice (an hour and more; SEED=, MOST=)
	@$(RUN) tests.mutants --seed $(SEED) --most $(MOST)

.PHONY: kept cut
kept: setup ## renew the kept answers and print what changed in them; to be read
	@$(RUN) tests.kept

cut: setup ## measure on every page, in every state and language, that no word is cut (half an hour)
	@$(BIN)/pytest -q -n 2 tests/gui/every_state_cut.py

bench: setup ## every figure beside its reference, in one run
	@$(RUN) tests.bench --out bench-output

torture: setup ## faults by the hundred, with counts (20 minutes and more)
	@$(RUN) tests.faults --out torture-output

real-radio: setup ## a real Bluetooth stack in a virtual machine (root, QEMU, 3 GB; a quarter of an hour; not in make test)
	@command -v qemu-system-x86_64 debootstrap cpio >/dev/null \
	  || { echo "needs root and: apt-get install qemu-system-x86 debootstrap cpio kmod"; exit 1; }
	@mkdir -p $(RADIO_WORK)
	@work=$(RADIO_WORK) python=$(CURDIR)/$(BIN)/python bash tests/real_radio/build.sh
	@work=$(RADIO_WORK) bash tests/real_radio/boot.sh make plain "$(RADIO_TESTS)" 3600
	@$(BIN)/python tests/real_radio/judge.py $(RADIO_WORK)/out-make $(RADIO_TESTS)

SECONDS_EACH ?= 60
fuzz: setup ## fuzzing guided by coverage, a minute for every reader and decoder (Linux)
	@$(BIN)/python -m pip install --quiet --disable-pip-version-check --no-deps --require-hashes -r .ci/fuzz.txt
	@$(RUN) tests.faults.guided --seconds $(SECONDS_EACH)

bundle: setup ## one folder and an archive of it, for people without Python
	@$(BIN)/python -m pip install --quiet --disable-pip-version-check --no-deps --require-hashes -r .ci/bundle/packages.txt
	@$(BIN)/python .ci/bundle/make.py

bundle-check: ## run it in a bare Debian root without Python (as root, with debootstrap and Xvfb)
	@$(BIN)/python .ci/bundle/bare.py

shots: setup ## a picture of every page, state, theme and size
	@$(RUN) tests.gui.shots shots

notebook: setup ## run recordings/notebook.ipynb and keep what it says
	@cd recordings && ../$(BIN)/jupyter-execute --NotebookClient.record_timing=False --inplace notebook.ipynb
translations: setup ## release the catalogues of the window's texts
	@for one in gui/translations/*.ts; do $(BIN)/pyside6-lrelease -silent $$one -qm $${one%.ts}.qm; done

lock: setup ## write .ci/constraints.txt again from pyproject.toml
	@$(BIN)/python -m pip install --quiet uv
	@$(BIN)/uv pip compile --universal --python-version 3.11 --generate-hashes --no-header --no-annotate \
	  --all-extras --group dev pyproject.toml -o .ci/constraints.txt
	@for group in fuzz:.ci/fuzz.txt bundle:.ci/bundle/packages.txt; do \
	  $(BIN)/uv pip compile -q --universal --python-version 3.11 --generate-hashes --no-header --no-annotate \
	    --group pyproject.toml:$${group%%:*} -o $${group#*:}; done

clean: ## remove everything that was made here
	rm -rf .venv build dist *.egg-info demo-output bench-output torture-output shots
