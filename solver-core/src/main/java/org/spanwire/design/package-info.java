/**
 * A whole design as a value: the antenna with its parameters and their spreads, the feed chain, the
 * bands, the requirements; and its reader, which places every error by file, line and column.
 */
package org.spanwire.design;
