/** Sends unsent rows of the booth log to PostgreSQL or into a folder, and collects folders. */
package org.boothlamp.sync;
