/**
 * Results as text, JSON and CSV. JSON and CSV hold SI units and full precision; text is for
 * reading.
 */
package org.spanwire.cli.output;
