/**
 * The page of {@code spanwire report}: sections of words, tables and pictures in one self-contained
 * HTML file.
 */
package org.spanwire.cli.report;
