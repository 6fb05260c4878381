/** The subcommands: options in, a report out. */
package org.spanwire.cli.command;
