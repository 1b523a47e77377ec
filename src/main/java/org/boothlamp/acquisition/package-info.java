/** Where sample pairs come from: serial front end, recording, simulated booth. */
package org.boothlamp.acquisition;
