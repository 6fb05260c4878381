/** What the commands compute, as values: designs solved at frequencies and judged over bands. */
package org.spanwire.cli.study;
