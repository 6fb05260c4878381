/**
 * Pictures of results: line charts and maps by JFreeChart, round charts drawn here, written as SVG
 * or PNG. Nothing in here computes a result.
 */
package org.spanwire.cli.chart;
