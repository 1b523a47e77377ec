/** The booth log in SQLite: schema steps, the only writer, readers. */
package org.boothlamp.boothlog;
