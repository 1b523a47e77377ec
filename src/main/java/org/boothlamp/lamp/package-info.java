/** What the trainee sees: GPIO pins, the serial front end's lamp, the console, a trace file. */
package org.boothlamp.lamp;
