/** The commands: one class each. */
package org.boothlamp.cli;
