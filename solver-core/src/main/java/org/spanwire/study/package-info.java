/**
 * Studies: designs solved at frequencies, judged over bands, swept over parameters. What comes out
 * is values. The conventions are those of {@link org.spanwire}.
 */
package org.spanwire.study;
