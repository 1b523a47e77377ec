/** Welding procedures as plain records: passes and the windows of their averages. */
package org.boothlamp.procedure;
