/** Reads and checks booth.toml and the procedure files. */
package org.boothlamp.settings;
