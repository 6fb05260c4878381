/** Published values as cases, the runner that holds Spanwire to them, and the report it writes. */
package org.spanwire.validation;
