//! What only several parts together can show: see the test files beside this one.
