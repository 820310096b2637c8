// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const whatCameraSees: string = "What the camera sees";
export const startingCamera: string = "Starting the camera …";
export const cameraIsOffWhile: string = "The camera is off while this page is not looked at.";
export const switchItOn: string = "Switch it on";
export const tryCameraAgain: string = "Try the camera again";
export const noCodeWasFound: string = "No code was found in the picture. Take it again with the code sharp, without glare and filling most of it.";
export const thisFileIsNot: string = "This file is not a picture that can be read here. Choose a photo of the code.";
