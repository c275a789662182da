console.log('kept', __VERSION__, __FILES__);
